import { appendFileSync, readFileSync, rmSync } from 'node:fs';

const KEPT = 500;

/** Lines typed in earlier sittings, the newest first; none where the file is not there yet. */
export function earlierLines(file: string): string[] {
  try {
    return readFileSync(file, 'utf8').split('\n').filter(Boolean).slice(-KEPT).reverse();
  } catch {
    return [];
  }
}

/** Adds a line for the next sitting. A history that cannot be kept is no reason to stop answering. */
export function rememberIn(file: string): (line: string) => void {
  return (line) => {
    try {
      appendFileSync(file, `${line}\n`, { mode: 0o600 });
    } catch {
      // The line was answered; only the arrow key will not find it again.
    }
  };
}

/** Everything typed before is gone: nobody knows who typed which line, and somebody was forgotten. */
export function dropHistory(file: string): void {
  rmSync(file, { force: true });
}
