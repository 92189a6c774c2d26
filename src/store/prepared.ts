import type { Compilable, CompiledQuery, Kysely } from 'kysely';
import { OneConnection } from './connection.ts';
import type { Tables } from './tables.ts';

/** Stands for a value that is given when the query is run. */
class Slot {
  readonly name: PropertyKey;

  constructor(name: PropertyKey) {
    this.name = name;
  }
}

/**
 * A query that is put together once and run many times: what is kept with each log has no time to be built
 * and written out as SQL anew. `build` is called a single time, with a stand-in for each value, so it must
 * not look into the values; every one must be given, null where there is none.
 */
export function prepared<Given extends object, Row>(
  build: (tables: Kysely<Tables>, given: Given) => Compilable<Row>,
): (tables: Kysely<Tables>, given: Given) => Promise<Row[]> {
  let compiled: CompiledQuery<Row> | undefined;
  const slots = new Proxy({} as Given, { get: (_, name) => new Slot(name) });
  return async (tables, given) => {
    compiled ??= build(tables, slots).compile();
    const parameters = compiled.parameters.map((value) =>
      value instanceof Slot ? given[value.name as keyof Given] : value,
    );
    const { adapter } = tables.getExecutor();
    // Nobody else is on the connection in a transaction, or where there is none: no need to stand in line for it.
    if (adapter instanceof OneConnection && (tables.isTransaction || adapter.free))
      return adapter.run(compiled.sql, parameters) as Row[];
    const made: CompiledQuery<Row> = { ...compiled, parameters };
    return (await tables.executeQuery(made)).rows;
  };
}
