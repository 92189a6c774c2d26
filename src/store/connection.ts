import type Database from 'better-sqlite3';
import { CompiledQuery, type DatabaseConnection, Kysely, SqliteDialect, SqliteDriver } from 'kysely';
import type { Tables } from './tables.ts';

/** Typed queries over one open database. All of them share its one connection, one after another. */
export const tablesOf = (database: Database.Database): Kysely<Tables> =>
  new Kysely<Tables>({ dialect: new OneWriterDialect(database) });

class OneWriterDialect extends SqliteDialect {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): OneWriterDriver {
    return new OneWriterDriver(this.#database);
  }
}

class OneWriterDriver extends SqliteDriver {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
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
