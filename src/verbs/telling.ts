import type { Wrong } from '../measure/result.ts';
import { decimal, grouped } from '../measure/ruler.ts';
import { sentence } from './sentence.ts';

export const tell = (line: string): void => void process.stdout.write(`${line}\n`);

/** Tells what was wrong, and gives the status to end with. */
export function complain({ problem }: Wrong, status = 2): number {
  process.stderr.write(`${sentence(problem)}\n`);
  return status;
}

/** The size of a file as it is said. `bytesWords(28672)` is "28 KB". */
export const bytesWords = (bytes: number): string =>
  bytes < 1024 * 1024 ? `${grouped(Math.ceil(bytes / 1024))} KB` : `${decimal(bytes / 1024 / 1024, 1)} MB`;

/** A moment as it is said, UTC. */
export const momentWords = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;
