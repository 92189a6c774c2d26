import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import type { ClothSize } from '../calculator/fabric/plan.ts';

/** A PDF being written. Its pages have (0, 0) at the top left, y downward, 72 points an inch. */
export type Paper = PDFKit.PDFDocument;

export const POINTS = 72;

const require = createRequire(import.meta.url);

/** The fonts by their files; what is used of them goes into the PDF. */
export const PLAIN = require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf');
export const BOLD = require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf');

/** What the library keeps to itself: how a viewer is told to print, and a second copy of the dates. */
interface Inside {
  endMetadata(): void;
  readonly _root: {
    readonly data: { readonly ViewerPreferences: { readonly data: Record<string, unknown> } };
  };
}

export interface PaperLook {
  readonly title: string;
  readonly size: ClothSize;
  /** False leaves the pages' lines readable in the file. */
  readonly compress?: boolean;
}

/** The moment that stands in for now while the file's number is made: the same papers are the same bytes. */
const NO_TIME = new Date(0);

/** A PDF without a page yet. It names no date and no place; a viewer is told to print it at its own size. */
export function newPaper({ title, size, compress = true }: PaperLook): Paper {
  const paper = new PDFDocument({
    size: [size.width * POINTS, size.length * POINTS],
    margin: 0,
    autoFirstPage: false,
    compress,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    info: { Title: title, Producer: 'Honeycount', Creator: 'Honeycount', CreationDate: NO_TIME },
    // Without this the library reads its own standard font, which nothing here uses.
    font: PLAIN,
  });
  delete paper.info.CreationDate;
  const inside = paper as unknown as Inside;
  inside._root.data.ViewerPreferences.data.PrintScaling = 'None';
  inside.endMetadata = () => {};
  return paper;
}

/** The bytes of a PDF that is done. */
export async function bytesOf(paper: Paper): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  paper.on('data', (part: Uint8Array) => parts.push(part));
  const ended = new Promise<void>((done, failed) => {
    paper.on('end', done);
    paper.on('error', failed);
  });
  paper.end();
  await ended;
  return Buffer.concat(parts);
}
