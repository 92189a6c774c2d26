import type { Kysely } from 'kysely';
import type { KeptPlan, PlansKept } from '../guild/plan-facts.ts';
import { planKey } from '../guild/plan-rules.ts';
import type { Keeping } from './keeping.ts';
import type { Tables } from './tables.ts';

type Row = Tables['plans'];

/** The guilds' plans. A row that makes no sense is reported and left out. */
export function plansIn(tables: Kysely<Tables>, { report }: Keeping): PlansKept {
  async function planOf(row: Row): Promise<KeptPlan | undefined> {
    // The schema library is loaded only when a plan is read.
    const wish = (await import('./plan-wish.ts')).readWish(row.wish);
    if (!wish) {
      report({ code: 'store-bad-row', table: 'plans', guild: row.guild, names: row.name });
      return undefined;
    }
    const { name, owner, owner_name: ownerName, kept_on: keptOn, changed_on: changedOn } = row;
    return { name, owner, ownerName, wish, keptOn, changedOn };
  }

  const found = (guild: string, name: string) =>
    tables
      .selectFrom('plans')
      .selectAll()
      .where('guild', '=', guild)
      .where('key', '=', planKey(name))
      .executeTakeFirst();

  return {
    async find(guild, name) {
      const row = await found(guild, name);
      return row && planOf(row);
    },
    async list(guild) {
      const rows = await tables
        .selectFrom('plans')
        .selectAll()
        .where('guild', '=', guild)
        .orderBy('key')
        .execute();
      const plans = await Promise.all(rows.map(planOf));
      return plans.filter((plan) => plan !== undefined);
    },
    async keep(guild, { name, owner, ownerName, wish, keptOn, changedOn }) {
      const row: Row = {
        ...{ guild, key: planKey(name), name, owner, owner_name: ownerName },
        ...{ wish: JSON.stringify(wish), kept_on: keptOn, changed_on: changedOn },
      };
      const kept = await tables
        .insertInto('plans')
        .values(row)
        .onConflict((conflict) => conflict.columns(['guild', 'key']).doNothing())
        .executeTakeFirst();
      return kept.numInsertedOrUpdatedRows === 1n;
    },
    async change(guild, name, wish, on) {
      const changed = await tables
        .updateTable('plans')
        .set({ wish: JSON.stringify(wish), changed_on: on })
        .where('guild', '=', guild)
        .where('key', '=', planKey(name))
        .executeTakeFirst();
      return changed.numUpdatedRows === 1n;
    },
    async remove(guild, name) {
      const removed = await tables
        .deleteFrom('plans')
        .where('guild', '=', guild)
        .where('key', '=', planKey(name))
        .executeTakeFirst();
      return removed.numDeletedRows === 1n;
    },
  };
}
