import { inject } from 'vitest';
import type { TestProject } from 'vitest/node';
import { Homeserver, type Reach } from './homeserver.ts';

declare module 'vitest' {
  interface ProvidedContext {
    homeserver: Reach;
  }
}

/** One homeserver for all the files of a run: each has accounts and rooms of its own there. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const homeserver = await Homeserver.open();
  project.provide('homeserver', homeserver.reach);
  return () => homeserver.close();
}

/** The homeserver of this run. */
export const here = (): Reach => inject('homeserver');
