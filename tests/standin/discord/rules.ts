import * as spec from 'discord-api-spec/zod';

/** The published schema for the body of each request that the bot may make. */
const SCHEMAS: readonly (readonly [method: string, path: RegExp, schema: spec.Schema])[] = [
  ['PUT', /^\/applications\/\d+\/(?:guilds\/\d+\/)?commands$/, spec.ApplicationCommandUpdateRequestSchema],
  ['POST', /^\/users\/@me\/channels$/, spec.CreatePrivateChannelRequestSchema],
  ['POST', /^\/channels\/\d+\/messages$/, spec.MessageCreateRequestSchema],
  ['PATCH', /^\/channels\/\d+\/messages\/\d+$/, spec.MessageEditRequestPartialSchema],
  ['POST', /^\/webhooks\/\d+\/[^/]+$/, spec.IncomingWebhookInteractionRequestSchema],
  [
    'PATCH',
    /^\/webhooks\/\d+\/[^/]+\/messages\/@original$/,
    spec.IncomingWebhookUpdateForInteractionCallbackRequestPartialSchema,
  ],
];

const CALLBACKS: Readonly<Record<number, spec.Schema>> = {
  4: spec.CreateMessageInteractionCallbackRequestSchema,
  5: spec.CreateMessageInteractionCallbackRequestSchema,
  7: spec.UpdateMessageInteractionCallbackRequestSchema,
  8: spec.ApplicationCommandAutocompleteCallbackRequestSchema,
  9: spec.ModalInteractionCallbackRequestSchema,
};

type Body = Record<string, unknown>;

/** What is wrong with a request's body by the published schemas and by the rules that they leave out. */
export function faultsOf(method: string, path: string, body: unknown, files: readonly string[]): string[] {
  if (/^\/interactions\//.test(path)) return callbackFaults(body as Body, files);
  const found = SCHEMAS.find(([m, pattern]) => m === method && pattern.test(path));
  if (!found) return body === undefined || body === null ? [] : [`no schema for ${method} ${path}`];
  if (Array.isArray(body))
    return body.flatMap((one) => [...againstSchema(found[2], one), ...commandFaults(one)]);
  if (path === '/users/@me/channels') return againstSchema(found[2], body);
  return [...againstSchema(found[2], body), ...messageFaults(body as Body, files, method === 'PATCH')];
}

function callbackFaults(body: Body, files: readonly string[]): string[] {
  // That the pressed message will change is said by the type alone.
  if (body.type === 6) return body.data === undefined ? [] : ['data with a callback of type 6'];
  const schema = CALLBACKS[Number(body.type)];
  if (!schema) return [`no callback of type ${body.type}`];
  const data = (body.data ?? {}) as Body;
  const more = body.type === 4 || body.type === 7 ? messageFaults(data, files, body.type === 7) : [];
  return [...againstSchema(schema, body), ...more, ...(body.type === 9 ? modalFaults(data) : [])];
}

function againstSchema(schema: spec.Schema, body: unknown): string[] {
  const read = schema.safeParse(body);
  return read.success ? [] : read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
}

type Component = {
  type: number;
  custom_id?: string;
  label?: string;
  components?: Component[];
  disabled?: boolean;
};

/** Rules of messages that the description does not hold: emptiness, sums, rows, ids, mentions, attachments. */
function messageFaults(message: Body, files: readonly string[], edit: boolean): string[] {
  const faults: string[] = [];
  const embeds = (message.embeds ?? []) as Body[];
  const rows = (message.components ?? []) as Component[];
  const attachments = (message.attachments ?? []) as { id: string | number; filename?: string }[];
  if (!edit && !message.content && embeds.length === 0 && files.length === 0) faults.push('an empty message');
  if (String(message.content ?? '').length > 2000) faults.push('content over 2000');
  const together = embeds.reduce((sum, embed) => sum + embedLength(embed), 0);
  if (together > 6000) faults.push(`embeds of ${together} in all`);
  for (const embed of embeds) if (embedLength(embed) === 0 && !embed.image) faults.push('an empty embed');
  if (rows.length > 5) faults.push(`${rows.length} rows`);
  faults.push(...componentFaults(rows));
  const allowed = message.allowed_mentions as
    | { parse?: unknown[]; users?: unknown[]; roles?: unknown[] }
    | undefined;
  if (!allowed) faults.push('allowed_mentions not stated');
  else if ([allowed.parse, allowed.users, allowed.roles].some((list) => (list?.length ?? 0) > 0))
    faults.push('allowed_mentions not empty');
  if (attachments.length !== files.length && files.length > 0) faults.push('attachments do not match files');
  files.forEach((name, i) => {
    if (!attachments.some(({ id }) => String(id) === String(i)))
      faults.push(`file ${name} has no attachment ${i}`);
  });
  return faults;
}

const embedLength = (embed: Body): number => {
  const fields = (embed.fields ?? []) as { name: string; value: string }[];
  const footer = (embed.footer as { text?: string } | undefined)?.text ?? '';
  const own = [embed.title, embed.description, footer].map((text) => String(text ?? '').length);
  return [...own, ...fields.map(({ name, value }) => name.length + value.length)].reduce((a, b) => a + b, 0);
};

function componentFaults(rows: readonly Component[]): string[] {
  const faults: string[] = [];
  const ids = new Set<string>();
  for (const row of rows) {
    const inside = row.components ?? [];
    if (inside.length === 0 || inside.length > 5) faults.push(`a row of ${inside.length}`);
    for (const one of inside) {
      if (!one.custom_id) faults.push('a component without custom_id');
      else if (ids.has(one.custom_id)) faults.push(`custom_id twice: ${one.custom_id}`);
      else ids.add(one.custom_id);
      if ((one.custom_id?.length ?? 0) > 100) faults.push('custom_id over 100');
      if (one.type === 2 && !one.label) faults.push('a button without a label');
    }
  }
  return faults;
}

function modalFaults(modal: Body): string[] {
  const rows = (modal.components ?? []) as Component[];
  const faults = componentFaults(rows);
  if (!modal.custom_id || !modal.title) faults.push('a modal without custom_id or title');
  if (rows.length === 0 || rows.length > 5) faults.push(`a modal of ${rows.length} rows`);
  return faults;
}

type Offered = { name: string; type: number; required?: boolean; description: string; options?: Offered[] };

/** Names, descriptions and values of a command, its options and their choices together. */
const LONGEST_COMMAND = 8000;

type Described = {
  name: string;
  description?: string;
  value?: unknown;
  options?: Described[];
  choices?: Described[];
};

const wordsIn = ({ name, description = '', value = '', options = [], choices = [] }: Described): number =>
  [...options, ...choices].reduce(
    (sum, inside) => sum + wordsIn(inside),
    name.length + description.length + String(value).length,
  );

/** Required options first, no name twice, at most 25; not too long in all. */
function commandFaults(command: unknown): string[] {
  const { options = [] } = command as { options?: Offered[] };
  const size = wordsIn(command as Described);
  return [...listFaults(options), ...(size > LONGEST_COMMAND ? [`a command of ${size}`] : [])];
}

function listFaults(options: readonly Offered[]): string[] {
  const faults: string[] = [];
  const firstFree = options.findIndex((option) => option.type > 2 && !option.required);
  if (firstFree >= 0 && options.slice(firstFree).some((option) => option.required))
    faults.push('a required option after one that is not');
  if (new Set(options.map(({ name }) => name)).size !== options.length) faults.push('an option named twice');
  if (options.length > 25) faults.push(`${options.length} options`);
  for (const { name } of options)
    if (!/^[-_a-z0-9]{1,32}$/.test(name)) faults.push(`an option called ${name}`);
  if (options.some(({ type }) => type <= 2) && options.some(({ type }) => type > 2))
    faults.push('subcommands beside options');
  return [...faults, ...options.flatMap((option) => listFaults(option.options ?? []))];
}
