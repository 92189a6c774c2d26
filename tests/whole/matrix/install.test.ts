import { chmodSync, existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { environment, RELEASE } from './environment.ts';

/** Without a homeserver the tests that need one must fail, and say what is missing. */
const folder = mkdtempSync(join(tmpdir(), 'honeycount-install-'));
const cache = join(folder, 'cache');

afterEach(() => rmSync(cache, { recursive: true, force: true }));

/** A Python that does what a shell script says. */
function python(name: string, script: string): string {
  const file = join(folder, name);
  writeFileSync(file, `#!/bin/sh\n${script}\n`);
  chmodSync(file, 0o755);
  return file;
}

const NO_VENV = 'echo "The virtual environment was not created: ensurepip is not available."; exit 1';
/** Makes an environment whose own Python answers everything with one line and a status. */
const makes = (line: string, status: number) =>
  `mkdir -p "$3/bin"; printf '#!/bin/sh\\necho "${line}"\\nexit ${status}\\n' > "$3/bin/python"; chmod +x "$3/bin/python"`;
const asked = (venv: string) => `case "$1" in -c) echo 3.11;; *) ${venv};; esac`;

test.each([
  ['no Python', () => join(folder, 'nowhere'), /Python is missing .*Install python3/],
  ['an old Python', () => python('old', 'echo 3.8'), /too old \(3\.8\)\. Install python3, 3\.10/],
  [
    'no venv',
    () => python('bare', asked(NO_VENV)),
    /ensurepip is not available.*apt-get install python3-venv/,
  ],
  [
    'an install that fails',
    () => python('cut-off', asked(makes('No matching distribution found', 1))),
    new RegExp(`matrix-synapse ${RELEASE} could not be installed \\(No matching distribution found\\)`),
  ],
  ['another release', () => python('other', asked(makes('1.0.0', 0))), /does not load/],
])(
  'with %s there is a sentence that says what is missing, and nothing half made',
  (_what, make, sentence) => {
    expect(() => environment({ python: make(), cache })).toThrow(sentence);
    expect(existsSync(cache) ? readdirSync(cache) : []).toEqual([]);
  },
);

test('a whole environment is used as it is', () => {
  const whole = { python: python('whole', asked(makes(RELEASE, 0))), cache };
  const first = environment(whole);
  expect(environment({ python: join(folder, 'nowhere'), cache })).toBe(first);
});
