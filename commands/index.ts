import type { CommandList } from '../src/chat/command.ts';

/** Every command, by the word a member types. Each is loaded when it is first asked for. */
export const commands: CommandList = {
  cut: async () => (await import('./cut.ts')).default,
  count: async () => (await import('./count.ts')).default,
  yield: async () => (await import('./yield.ts')).default,
  yardage: async () => (await import('./yardage.ts')).default,
  template: async () => (await import('./template.ts')).default,
  time: async () => (await import('./time.ts')).default,
  finish: async () => (await import('./finish.ts')).default,
  ruler: async () => (await import('./ruler.ts')).default,
  check: async () => (await import('./check.ts')).default,
  plan: async () => (await import('./plan.ts')).default,
  kit: async () => (await import('./kit.ts')).default,
  challenge: async () => (await import('./challenge.ts')).default,
  log: async () => (await import('./log.ts')).default,
  undo: async () => (await import('./undo.ts')).default,
  fix: async () => (await import('./fix.ts')).default,
  standings: async () => (await import('./standings.ts')).default,
  month: async () => (await import('./month.ts')).default,
  swap: async () => (await import('./swap.ts')).default,
  me: async () => (await import('./me.ts')).default,
  guild: async () => (await import('./guild.ts')).default,
  help: async () => (await import('./help.ts')).default,
};
