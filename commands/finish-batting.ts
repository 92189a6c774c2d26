import { BATTING_PACKAGES, type BattingPackage, batting } from '../src/calculator/finishing/batting.ts';
import { form } from '../src/chat/command.ts';
import { count, inches, reply } from '../src/chat/reply.ts';
import { capital, type Speech } from '../src/measure/speech.ts';
import { assumedNote } from './assumed.ts';
import { neededQuilt, overAssumed, overOption, quiltAssumed, quiltCautions } from './finish-words.ts';

export const battingForm = form({
  name: 'batting',
  summary: 'Which package of batting is large enough',
  examples: ['/finish batting 62x76in', '/finish batting queen', '/finish batting quilt:140x200cm over:10cm'],
  options: { quilt: neededQuilt, over: overOption },
  run({ quilt, over }, here) {
    const { say } = here;
    const found = batting(quilt.width, quilt.height, over);
    const packages = found.package ? 1 : found.twice ? 2 : 0;
    return reply({
      title: `Batting for ${say.size(quilt.width, quilt.height)}`,
      lines: [
        firstLine(found, say),
        `It needs ${say.size(found.needWidth, found.needHeight)}.`,
        'Makers differ: read the size on the package.',
      ],
      table: {
        columns: ['package', 'size', ''],
        rows: BATTING_PACKAGES.map((one) => [
          one.name,
          say.size(one.width, one.height),
          one === (found.package ?? found.twice) ? (found.package ? 'this one' : 'two of these') : '',
        ]),
      },
      figures: {
        needWidth: inches(found.needWidth),
        needLength: inches(found.needHeight),
        package: { value: packageName(found), unit: '' },
        packages: count(packages),
      },
      notes: assumedNote([...quiltAssumed(quilt, here), ...overAssumed(over, here)]),
      cautions: quiltCautions(quilt),
    });
  },
});

interface Found {
  readonly package: BattingPackage | undefined;
  readonly twice: BattingPackage | undefined;
}

/** The package's name, or none where not even two are large enough. */
export const packageName = (found: Found): string => (found.package ?? found.twice)?.name ?? 'none';

/** "Twin package, 72 x 90 in". */
export function packageWords(found: Found, say: Speech): string {
  const one = found.package ?? found.twice;
  if (!one) return 'by the yard, joined';
  const named = `${one.name} package`;
  return `${found.package ? named : `2 ${named}s`}, ${say.size(one.width, one.height)}`;
}

function firstLine(found: Found, say: Speech): string {
  if (found.package) return `${capital(packageWords(found, say))}.`;
  if (found.twice) return `${packageWords(found, say)}, laid edge to edge and joined loosely.`;
  return 'Larger than two of any package: buy it by the yard and join it edge to edge.';
}
