import type Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
} from 'kysely';
import type { Tables } from './tables.ts';

/** Typed queries over one open database. All of them share its one connection, one after another. */
export const tablesOf = (database: Database.Database): Kysely<Tables> =>
  new Kysely<Tables>({ dialect: new OneWriterDialect(database) });

type Prepare = (sql: string) => Database.Statement<unknown[]>;

class OneWriterDialect extends SqliteDialect {
  readonly #database: Database.Database;
  readonly #prepare: Prepare;

  constructor(database: Database.Database) {
    super({ database });
    this.#database = database;
    this.#prepare = preparedOnce(database);
  }

  override createDriver(): OneWriterDriver {
    return new OneWriterDriver(this.#database, this.#prepare);
  }

  override createAdapter(): OneConnection {
    return new OneConnection(this.#database, this.#prepare);
  }
}

/** Knows that there is but one connection: whoever is in a transaction has it, and may run a statement on it. */
export class OneConnection extends SqliteAdapter {
  readonly #database: Database.Database;
  readonly #prepare: Prepare;

  constructor(database: Database.Database, prepare: Prepare) {
    super();
    this.#database = database;
    this.#prepare = prepare;
  }

  /** Nobody is in a transaction: a statement run now is a work of its own. */
  get free(): boolean {
    return this.#database.open && !this.#database.inTransaction;
  }

  /** Runs a statement at once. Only for the one who is in a transaction, or while nobody is. */
  run(sql: string, parameters: readonly unknown[]): unknown[] {
    const statement = this.#prepare(sql);
    if (statement.reader) return statement.all(parameters);
    statement.run(parameters);
    return [];
  }
}

class OneWriterDriver extends SqliteDriver {
  readonly #database: Database.Database;

  constructor(database: Database.Database, prepare: Prepare) {
    super({ database: { prepare, close: () => database.close() } });
    this.#database = database;
  }

  /**
   * Takes the right to write at once. A transaction that first reads and then wants to write is refused
   * without waiting when another process has written in between.
   */
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /** A full disk ends the transaction by itself; rolling back once more would hide why. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** More statements than the program has; one that is put together anew each time does not pile up. */
const MOST_KEPT = 300;

/** Prepares a statement when it is first needed and keeps it: the same ones are run again and again. */
function preparedOnce(database: Database.Database): Prepare {
  const kept = new Map<string, Database.Statement<unknown[]>>();
  return (sql) => {
    const known = kept.get(sql);
    if (known) return known;
    if (kept.size >= MOST_KEPT) kept.clear();
    const statement = database.prepare<unknown[]>(sql);
    kept.set(sql, statement);
    return statement;
  };
}
