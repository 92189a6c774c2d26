import { ButtonStyle, ComponentType } from 'discord.js';
import type { NotesKept } from '../../chat/facts.ts';
import { referenceOf } from '../../chat/reference.ts';
import type { Picture, Recipe, Reply } from '../../chat/reply.ts';
import type { PlatformNeeds } from '../platform.ts';
import { idOfChoice, idOfPage, keepPages, type Whose } from './choices.ts';
import { cutTo, LIMITS } from './limits.ts';
import type { MessageFile } from './multipart.ts';
import { incomplete, tooLarge } from './own-words.ts';
import { type Page, pagesOf } from './pages.ts';
import { accountOf } from './trouble.ts';

/** What a message is made with: whose ask it answers, what is kept, and how pictures are drawn. */
export interface MessageNeeds {
  readonly whose: Whose;
  readonly notes: NotesKept;
  draw(recipe: Recipe): Promise<Uint8Array>;
  /** Keeps a reply of several pages and gives its key, where that is done otherwise than for any answer. */
  keep?(reply: Reply): Promise<string>;
}

const ACCENT = 0x4f7a6b;
const MISTAKE = 0xb07d2b;

/** A row of buttons is kept for turning pages; the choices have the others. */
const CHOICES_ON_PAGE = (LIMITS.rows - 1) * LIMITS.buttonsInRow;

/** A message as the platform takes it: its JSON, and the files that go with it. */
export interface Made {
  readonly json: Readonly<Record<string, unknown>>;
  readonly files: readonly MessageFile[];
}

/** Nobody is called by anything that a message says. */
export const NO_MENTIONS = { parse: [], replied_user: false } as const;

/** A message of words alone. */
export const plainMessage = (content: string): Made => ({
  json: { content, allowed_mentions: NO_MENTIONS },
  files: [],
});

/** A reply as one message of the platform: its first page, or another one of the pages kept under a key. */
export async function messageOf(
  reply: Reply,
  needs: MessageNeeds,
  at: { page: number; key?: string } = { page: 0 },
): Promise<Made> {
  const pages = pagesOf(reply);
  const total = Math.max(pages.length, Math.ceil(reply.choices.length / CHOICES_ON_PAGE));
  const number = Math.max(0, Math.min(at.page, total - 1));
  const page = pages[number] ?? { title: pages[0]?.title ?? '', text: '', fields: [] };
  const { files, left } = number === 0 ? await filesOf(reply.pictures, needs) : NO_FILES;
  const keep = needs.keep ?? ((of) => keepPages(of, needs.whose, needs.notes));
  const key = total > 1 ? (at.key ?? (await keep(reply))) : undefined;
  const rows = await rowsOf(reply, number, needs);
  if (key) rows.push(turning(key, number, total));
  return {
    json: {
      content: left.join('\n'),
      embeds: [embedOf(page, reply, { number, total, image: firstImage(files) })],
      components: rows,
      // Where there are none, those of the page before go.
      attachments: files.map(({ description }, i) => ({ id: String(i), description })),
      allowed_mentions: NO_MENTIONS,
    },
    files,
  };
}

/**
 * The same, and where a picture cannot be drawn or a button's ask not be kept, the answer without them: what was
 * asked is done, and she must hear of it.
 */
export async function messageAnyway(
  of: Reply,
  needs: MessageNeeds,
  { log, now }: Pick<PlatformNeeds, 'log' | 'now'>,
): Promise<Made> {
  try {
    return await messageOf(of, needs);
  } catch (error) {
    const reference = referenceOf(now());
    log.error({ ...accountOf(error), reference }, 'an answer is incomplete');
    const bare = { ...of, pictures: [], choices: [], notes: [...of.notes, incomplete(reference)] };
    return messageOf(bare, { ...needs, keep: async () => 'lost' });
  }
}

interface Shown {
  readonly number: number;
  readonly total: number;
  readonly image: string | undefined;
}

function embedOf({ title, text, fields }: Page, reply: Reply, { number, total, image }: Shown) {
  return {
    ...(title ? { title } : {}),
    ...(text ? { description: text } : {}),
    color: reply.error ? MISTAKE : ACCENT,
    fields: [...fields],
    ...(image ? { image: { url: `attachment://${image}` } } : {}),
    ...(total > 1 ? { footer: { text: `${number + 1} of ${total}` } } : {}),
  };
}

interface DescribedFile extends MessageFile {
  readonly description: string;
}

interface Files {
  readonly files: readonly DescribedFile[];
  /** What is said of those that there is no room for. */
  readonly left: readonly string[];
}

const NO_FILES: Files = { files: [], left: [] };

async function filesOf(pictures: readonly Picture[], { draw }: MessageNeeds): Promise<Files> {
  const files: DescribedFile[] = [];
  const left: string[] = [];
  for (const { name, alt, of } of pictures) {
    const bytes = await draw(of);
    if (files.length < LIMITS.files && bytes.length <= LIMITS.fileBytes)
      files.push({ name: fileName(name), bytes, description: cutTo(alt, LIMITS.altText) });
    else left.push(tooLarge(fileName(name)));
  }
  return { files, left };
}

/** Only letters, figures, dots and hyphens: what an attachment can be pointed to by. */
const fileName = (name: string): string => name.replace(/[^A-Za-z0-9.-]/g, '-');

const firstImage = (files: readonly MessageFile[]): string | undefined =>
  files.find(({ name }) => name.endsWith('.png'))?.name;

type Row = { type: ComponentType.ActionRow; components: Button[] };
type Button = {
  type: ComponentType.Button;
  style: ButtonStyle.Primary | ButtonStyle.Secondary;
  label: string;
  custom_id: string;
  disabled?: boolean;
};

async function rowsOf({ choices }: Reply, page: number, { whose, notes }: MessageNeeds): Promise<Row[]> {
  const here = choices.slice(page * CHOICES_ON_PAGE, (page + 1) * CHOICES_ON_PAGE);
  const buttons: Button[] = [];
  for (const choice of here) {
    const id = await idOfChoice(choice, whose, notes);
    // The platform refuses a message with the same id twice.
    if (buttons.some(({ custom_id }) => custom_id === id)) continue;
    buttons.push(button(choice.label || choice.ask, id));
  }
  const rows: Row[] = [];
  for (let i = 0; i < buttons.length; i += LIMITS.buttonsInRow)
    rows.push({ type: ComponentType.ActionRow, components: buttons.slice(i, i + LIMITS.buttonsInRow) });
  return rows;
}

const button = (label: string, custom_id: string, disabled = false): Button => ({
  type: ComponentType.Button,
  style: ButtonStyle.Secondary,
  label: cutTo(label, LIMITS.buttonLabel),
  custom_id,
  ...(disabled ? { disabled } : {}),
});

function turning(key: string, number: number, total: number): Row {
  return {
    type: ComponentType.ActionRow,
    components: [
      button('Page before', idOfPage(key, number - 1), number === 0),
      button('Next page', idOfPage(key, number + 1), number === total - 1),
    ],
  };
}
