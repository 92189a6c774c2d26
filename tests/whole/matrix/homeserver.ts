import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { createHmac, randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';

/** The release that these tests were written with: older ones fail with today's dependencies. */
const RELEASE = '1.163.2';
export const SERVER_NAME = 'bees.test';

/** The virtual environment in the user's cache, made on first use. Throws a sentence that says what is missing. */
function environment(): string {
  const cache = join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'honeycount-homeserver');
  const place = join(cache, `venv-${RELEASE}`);
  const python = join(place, 'bin', 'python');
  if (isWhole(python)) return python;
  mkdirSync(cache, { recursive: true });
  rmSync(place, { recursive: true, force: true });
  const run = (what: string, file: string, args: string[]) => {
    try {
      execFileSync(file, args, { stdio: ['ignore', 'ignore', 'pipe'], timeout: 300_000 });
    } catch (error) {
      const said = String((error as { stderr?: Buffer }).stderr ?? error)
        .trim()
        .split('\n')
        .at(-1);
      throw new Error(`The homeserver for these tests cannot be installed: ${what} failed (${said}).`);
    }
  };
  run('python3 -m venv (Python 3.10 or newer with its venv module is needed)', 'python3', [
    '-m',
    'venv',
    place,
  ]);
  run(`installing matrix-synapse ${RELEASE} from the package index`, python, [
    ...['-m', 'pip', 'install', '--quiet', '--disable-pip-version-check', `matrix-synapse==${RELEASE}`],
  ]);
  if (!isWhole(python)) throw new Error('The homeserver was installed, but does not start.');
  return python;
}

function isWhole(python: string): boolean {
  if (!existsSync(python)) return false;
  try {
    const said = execFileSync(python, ['-c', 'import synapse; print(synapse.__version__)'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return said.toString().trim().startsWith(RELEASE);
  } catch {
    return false;
  }
}

const freePort = (): Promise<number> =>
  new Promise((done) => {
    const server = createServer();
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => done(port));
    });
  });

const MANY = { per_second: 10_000, burst_count: 10_000 };

function settings(folder: string, port: number, secret: string): object {
  return {
    server_name: SERVER_NAME,
    listeners: [
      {
        port,
        bind_addresses: ['127.0.0.1'],
        type: 'http',
        tls: false,
        resources: [{ names: ['client'], compress: false }],
      },
    ],
    database: { name: 'sqlite3', args: { database: join(folder, 'homeserver.db') } },
    log_config: join(folder, 'log.yaml'),
    media_store_path: join(folder, 'media'),
    pid_file: join(folder, 'pid'),
    signing_key_path: join(folder, 'signing.key'),
    registration_shared_secret: secret,
    macaroon_secret_key: secret,
    form_secret: secret,
    report_stats: false,
    trusted_key_servers: [],
    federation_domain_whitelist: [],
    presence: { enabled: false },
    url_preview_enabled: false,
    rc_message: MANY,
    rc_registration: MANY,
    rc_login: { address: MANY, account: MANY, failed_attempts: MANY },
    rc_joins: { local: MANY, remote: MANY },
    rc_joins_per_room: MANY,
    rc_invites: { per_room: MANY, per_user: MANY, per_issuer: MANY },
    rc_admin_redaction: MANY,
    rc_room_creation: MANY,
    rc_media_create: MANY,
  };
}

export interface Account {
  readonly user: string;
  readonly password: string;
}

/** A real homeserver on loopback, with nothing in it. */
export class Homeserver {
  readonly address: string;
  readonly folder: string;
  readonly #secret: string;
  readonly #python: string;
  #process: ChildProcess | undefined;

  private constructor(python: string, folder: string, port: number, secret: string) {
    this.#python = python;
    this.folder = folder;
    this.address = `http://127.0.0.1:${port}`;
    this.#secret = secret;
  }

  static async open(): Promise<Homeserver> {
    const python = environment();
    const folder = mkdtempSync(join(tmpdir(), 'honeycount-homeserver-'));
    const port = await freePort();
    const secret = randomBytes(24).toString('hex');
    writeFileSync(join(folder, 'log.yaml'), LOGGING(join(folder, 'homeserver.log')));
    // JSON is YAML.
    writeFileSync(join(folder, 'homeserver.yaml'), JSON.stringify(settings(folder, port, secret)));
    const server = new Homeserver(python, folder, port, secret);
    execFileSync(
      python,
      ['-m', 'synapse.app.homeserver', '-c', join(folder, 'homeserver.yaml'), '--generate-keys'],
      {
        stdio: 'ignore',
        cwd: folder,
      },
    );
    await server.start();
    return server;
  }

  async start(): Promise<void> {
    const out = openSync(join(this.folder, 'output.log'), 'a');
    this.#process = spawn(
      this.#python,
      ['-m', 'synapse.app.homeserver', '-c', join(this.folder, 'homeserver.yaml')],
      { cwd: this.folder, stdio: ['ignore', out, out] },
    );
    for (let tries = 0; tries < 600; tries++) {
      if (this.#process.exitCode !== null) break;
      const up = await fetch(`${this.address}/_matrix/client/versions`).then(
        ({ ok }) => ok,
        () => false,
      );
      if (up) return;
      await new Promise((done) => setTimeout(done, 100));
    }
    throw new Error(
      `The homeserver did not start: ${readFileSync(join(this.folder, 'output.log'), 'utf8').slice(-2000)}`,
    );
  }

  async stop(): Promise<void> {
    const process = this.#process;
    if (!process || process.exitCode !== null) return;
    const gone = new Promise((done) => process.once('exit', done));
    process.kill('SIGTERM');
    const hard = setTimeout(() => process.kill('SIGKILL'), 10_000);
    await gone;
    clearTimeout(hard);
  }

  async close(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }

  /** Registers an account by the server's shared secret. */
  async register(name: string): Promise<Account> {
    const password = randomBytes(12).toString('hex');
    const path = `${this.address}/_synapse/admin/v1/register`;
    const { nonce } = (await (await fetch(path)).json()) as { nonce: string };
    const mac = createHmac('sha1', this.#secret)
      .update([nonce, name, password, 'notadmin'].join('\0'))
      .digest('hex');
    const answer = await fetch(path, {
      method: 'POST',
      body: JSON.stringify({ nonce, username: name, password, admin: false, mac }),
    });
    if (!answer.ok) throw new Error(`registering ${name}: ${await answer.text()}`);
    return { user: `@${name}:${SERVER_NAME}`, password };
  }
}

const LOGGING = (file: string): string =>
  JSON.stringify({
    version: 1,
    formatters: { plain: { format: '%(asctime)s %(levelname)s %(name)s %(message)s' } },
    handlers: { file: { class: 'logging.FileHandler', formatter: 'plain', filename: file } },
    root: { level: 'WARNING', handlers: ['file'] },
    disable_existing_loggers: false,
  });
