import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { createHmac, randomBytes } from 'node:crypto';
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { environment } from './environment.ts';

export const SERVER_NAME = 'bees.test';

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
    stats: { enabled: false },
    // Sizes are made when they are asked for, and here nobody does.
    thumbnail_sizes: [],
    dynamic_thumbnails: true,
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
  readonly name: string;
  readonly user: string;
  readonly password: string;
}

/** Where a homeserver is, and the secret that registers accounts there. */
export interface Reach {
  readonly address: string;
  /** Whatever is written in it goes when the homeserver goes. */
  readonly folder: string;
  readonly secret: string;
}

/** A real homeserver on loopback, with nothing in it. */
export class Homeserver {
  readonly reach: Reach;
  readonly #process: ChildProcess;

  private constructor(reach: Reach, process: ChildProcess) {
    this.reach = reach;
    this.#process = process;
  }

  static async open(): Promise<Homeserver> {
    const python = environment();
    const folder = mkdtempSync(join(tmpdir(), 'honeycount-homeserver-'));
    const port = await freePort();
    const secret = randomBytes(24).toString('hex');
    const config = join(folder, 'homeserver.yaml');
    writeFileSync(join(folder, 'log.yaml'), LOGGING(join(folder, 'homeserver.log')));
    // JSON is YAML.
    writeFileSync(config, JSON.stringify(settings(folder, port, secret)));
    const synapse = ['-m', 'synapse.app.homeserver', '-c', config];
    execFileSync(python, [...synapse, '--generate-keys'], { stdio: 'ignore', cwd: folder });
    const output = join(folder, 'output.log');
    const out = openSync(output, 'a');
    const child = spawn(python, synapse, { cwd: folder, stdio: ['ignore', out, out] });
    closeSync(out);
    process.once('exit', () => child.kill('SIGKILL'));
    const address = `http://127.0.0.1:${port}`;
    if (!(await isUp(address, child)))
      throw new Error(`The homeserver did not start: ${readFileSync(output, 'utf8').slice(-2000)}`);
    return new Homeserver({ address, folder, secret }, child);
  }

  /** Ends the server and removes all it wrote; with HOMESERVER_KEEP set, its logs and the bots' stay to be read. */
  async close(): Promise<void> {
    const child = this.#process;
    const { folder } = this.reach;
    if (child.exitCode === null) {
      const gone = new Promise((done) => child.once('exit', done));
      child.kill('SIGTERM');
      const hard = setTimeout(() => child.kill('SIGKILL'), 10_000);
      await gone;
      clearTimeout(hard);
    }
    if (process.env.HOMESERVER_KEEP) return void process.stderr.write(`kept: ${folder}\n`);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function isUp(address: string, child: ChildProcess): Promise<boolean> {
  for (let tries = 0; tries < 600 && child.exitCode === null; tries++) {
    const up = await fetch(`${address}/_matrix/client/versions`).then(
      ({ ok }) => ok,
      () => false,
    );
    if (up) return true;
    await new Promise((done) => setTimeout(done, 100));
  }
  return false;
}

/** Registers an account by the server's shared secret; its name is the given one, made its own by a number. */
export async function register({ address, secret }: Reach, called: string): Promise<Account> {
  const password = randomBytes(12).toString('hex');
  const name = `${called}-${randomBytes(3).toString('hex')}`;
  const path = `${address}/_synapse/admin/v1/register`;
  const { nonce } = (await (await fetch(path)).json()) as { nonce: string };
  const mac = createHmac('sha1', secret).update([nonce, name, password, 'notadmin'].join('\0')).digest('hex');
  const answer = await fetch(path, {
    method: 'POST',
    body: JSON.stringify({ nonce, username: name, password, admin: false, mac }),
  });
  if (!answer.ok) throw new Error(`registering ${name}: ${await answer.text()}`);
  return { name, user: `@${name}:${SERVER_NAME}`, password };
}

/** A token of a new device, as an operator might paste it into the settings. */
export async function newToken({ address }: Reach, { user, password }: Account): Promise<string> {
  const answer = await fetch(`${address}/_matrix/client/v3/login`, {
    method: 'POST',
    body: JSON.stringify({ type: 'm.login.password', identifier: { type: 'm.id.user', user }, password }),
  });
  if (!answer.ok) throw new Error(`logging ${user} in: ${await answer.text()}`);
  return ((await answer.json()) as { access_token: string }).access_token;
}

const LOGGING = (file: string): string =>
  JSON.stringify({
    version: 1,
    formatters: { plain: { format: '%(asctime)s %(levelname)s %(name)s %(message)s' } },
    handlers: { file: { class: 'logging.FileHandler', formatter: 'plain', filename: file } },
    root: { level: 'WARNING', handlers: ['file'] },
    disable_existing_loggers: false,
  });
