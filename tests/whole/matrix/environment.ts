import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** The release that these tests were written with: older ones fail with today's dependencies. */
export const RELEASE = '1.163.2';

/** An install takes half a minute from an index nearby; more than this is no install any more, milliseconds. */
const LONGEST = 300_000;

export interface Where {
  /** The Python that makes the environment. */
  readonly python: string;
  /** The folder that it is kept in. */
  readonly cache: string;
}

const HERE: Where = {
  python: 'python3',
  cache: join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'honeycount-homeserver'),
};

/**
 * The Python of a virtual environment with the homeserver in it, made on first use with pip as it is set up on
 * this machine. Throws a sentence that says what is missing.
 */
export function environment({ python, cache }: Where = HERE): string {
  const place = join(cache, `venv-${RELEASE}`);
  const own = join(place, 'bin', 'python');
  if (isWhole(own)) return own;
  mkdirSync(cache, { recursive: true });
  // Made beside its place and moved there when it is whole: nobody finds half of one.
  const beside = `${place}.${process.pid}`;
  rmSync(beside, { recursive: true, force: true });
  try {
    make(python, beside);
    rmSync(place, { recursive: true, force: true });
    renameSync(beside, place);
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
  return own;
}

function make(python: string, place: string): void {
  const version = run('Python is missing', 'Install python3, 3.10 or newer.', python, [
    '-c',
    'import sys; print(*sys.version_info[:2], sep=".")',
  ]);
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major < 3 || (major === 3 && minor < 10))
    throw cannot(`Python is too old (${version})`, 'Install python3, 3.10 or newer.');
  run('Python’s venv module is missing', 'On Debian: apt-get install python3-venv.', python, [
    ...['-m', 'venv', place],
  ]);
  const own = join(place, 'bin', 'python');
  run(`matrix-synapse ${RELEASE} could not be installed`, 'Pip must reach a package index.', own, [
    ...['-m', 'pip', 'install', '--quiet', '--disable-pip-version-check', `matrix-synapse==${RELEASE}`],
  ]);
  if (!isWhole(own))
    throw cannot('matrix-synapse is installed, but does not load', 'Look at what pip installed.');
}

const cannot = (what: string, remedy: string): Error =>
  new Error(`These tests need a homeserver, and it cannot be installed: ${what}. ${remedy}`);

function run(what: string, remedy: string, file: string, args: readonly string[]): string {
  try {
    return execFileSync(file, args, { stdio: ['ignore', 'pipe', 'pipe'], timeout: LONGEST })
      .toString()
      .trim();
  } catch (error) {
    const { stderr, stdout, message } = error as { stderr?: Buffer; stdout?: Buffer; message: string };
    const said = `${stdout ?? ''}\n${stderr ?? ''}`.trim() || message;
    throw cannot(`${what} (${said.split('\n').filter(Boolean).slice(-3).join(' ').slice(0, 400)})`, remedy);
  }
}

function isWhole(python: string): boolean {
  if (!existsSync(python)) return false;
  try {
    const said = execFileSync(python, ['-c', 'import synapse; print(synapse.__version__)'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return said.toString().trim() === RELEASE;
  } catch {
    return false;
  }
}
