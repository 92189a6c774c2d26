import { type Answer, form, type Here } from '../src/chat/command.ts';
import { bare } from '../src/chat/option.ts';
import { whole as wholeNumber, yesNo } from '../src/chat/option-kinds.ts';
import { count, type Reply, reply, squareInches } from '../src/chat/reply.ts';
import type { SwapParcel } from '../src/guild/swap-facts.ts';
import type { WholeSwap } from '../src/guild/swap-plan.ts';
import { accounts, membersIn, type Standing, standingOf } from '../src/guild/swap-post.ts';
import { ok, type Result, wrong } from '../src/measure/result.ts';
import { grouped } from '../src/measure/ruler.ts';
import { many } from '../src/measure/speech.ts';
import { personNamed } from './swap-part.ts';
import { askedSwap, somebody, whichSwap } from './swap-which.ts';
import { areaFigure, areaUnit, areaWords, namesIn, piecesWords } from './swap-words.ts';

const NAMES = ['to', 'from', 'who', 'parcel', 'all', 'undo', 'done', 'swap'];

export const envelopes = form({
  name: 'envelopes',
  summary: 'What you put in each envelope, and what comes to you',
  examples: ['/swap envelopes', '/swap envelopes who:Ada'],
  options: { who: bare(somebody('Whose, for organisers', NAMES)), swap: whichSwap },
  audience: 'asker',
  async run({ who, swap: name }, here) {
    const asked = await askedSwap(name, here, { settled: true });
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    const whose = person(asked.value, who, here);
    return whose.ok ? theirs(asked.value, whose.value, here) : whose;
  },
});

interface Whose {
  readonly member: string;
  readonly name: string;
}

/** Whose parcels: the asker's, or somebody else's where an organiser asks. */
function person({ people, swap }: WholeSwap, who: string | undefined, here: Here): Result<Whose> {
  if (who === undefined) {
    const own = people.find(({ member }) => member === here.who.id);
    return own ? ok(own) : wrong('swap-not-in', { name: swap.name, instead: '' });
  }
  const found = personNamed(people, who);
  if (!found.ok || found.value.member === here.who.id || here.who.organiser) return found;
  return wrong('organisers-only', { what: 'Looking into the envelopes of others' });
}

function theirs(whole: WholeSwap, { member, name }: Whose, here: Here): Reply {
  const { swap, people, parcels } = whole;
  const nameOf = namesIn(people);
  const isIn = membersIn(people);
  const out = parcels.filter(({ from }) => from === member);
  const coming = parcels.filter(({ to }) => to === member);
  if (out.length + coming.length === 0)
    return reply({
      title: swap.name,
      lines:
        parcels.length > 0
          ? [
              `Nothing is planned for ${member === here.who.id ? 'you' : name}: nothing to send, nothing to come.`,
            ]
          : ['Nothing is planned yet. An organiser does it with `/swap match`'],
    });
  const row = (of: SwapParcel, who: string, said: Readonly<Partial<Record<Standing, string>>>) => {
    const is = standingOf(of, isIn);
    return [
      `${of.number} ${who}`,
      `${piecesWords(of.good, of.count, here.say)}${of.typed ? ` of: ${of.typed}` : ''}`,
      said[is] ?? is,
    ];
  };
  const still = (of: SwapParcel, ...are: Standing[]) => are.includes(standingOf(of, isIn));
  const toSend = out.filter((of) => still(of, 'to send'));
  const toCome = coming.filter((of) => still(of, 'to send', 'on its way'));
  const back = {
    out: coming.filter((of) => still(of, 'to send back')),
    home: out.filter((of) => still(of, 'to send back')),
  };
  const envelopes = new Set(toSend.map(({ to }) => to)).size;
  const comers = new Set(toCome.map(({ from }) => from)).size;
  return reply({
    title: `${swap.name}: the envelopes of ${name}`,
    lines: [
      `${envelopes === 0 ? 'Nothing more' : many(envelopes, 'envelope', 'envelopes')} to send, ${comers === 0 ? 'nothing more' : grouped(comers)} to come.`,
      ...(back.out.length > 0 ? [`${many(back.out.length, 'parcel', 'parcels')} to send back.`] : []),
      ...(back.home.length > 0 ? [`${many(back.home.length, 'parcel', 'parcels')} should come back.`] : []),
      ...(envelopes + comers > 0
        ? ['Say `/swap sent` when they are in the post, `/swap received` when they come.']
        : []),
    ],
    figures: {
      toSend: count(toSend.length),
      toCome: count(toCome.length),
      toSendBack: count(back.out.length),
    },
    table: {
      columns: ['parcel', 'what', 'is'],
      rows: [
        ...out.map((of) => row(of, `to ${nameOf(of.to)}`, { 'to send back': 'should come back' })),
        ...coming.map((of) => row(of, `from ${nameOf(of.from)}`, { 'to send': 'not sent yet' })),
      ],
    },
    notes: here.who.id === member ? [] : [`These are ${name}’s.`],
  });
}

export const sent = form({
  name: 'sent',
  summary: 'Say that what you send is in the post: all of it, to one member, or one parcel',
  examples: ['/swap sent', '/swap sent to:Bea', '/swap sent parcel:3'],
  options: {
    to: bare(somebody('To whom', NAMES)),
    parcel: wholeNumber('Which parcel', 1, 10_000_000, '3'),
    undo: yesNo('Whether it was not sent after all'),
    swap: whichSwap,
  },
  keeps: true,
  run: ({ to, ...values }, here) => mark('sent', { other: to, ...values }, here),
});

export const received = form({
  name: 'received',
  summary: 'Say that what was sent to you has come: all of it, from one member, or one parcel',
  examples: ['/swap received from:Ada', '/swap received parcel:3', '/swap received'],
  options: {
    from: bare(somebody('From whom', NAMES)),
    parcel: wholeNumber('Which parcel', 1, 10_000_000, '3'),
    undo: yesNo('Whether it did not come after all'),
    swap: whichSwap,
  },
  keeps: true,
  run: ({ from, ...values }, here) => mark('received', { other: from, ...values }, here),
});

type Mark = 'sent' | 'received';

interface Marked {
  readonly other?: string | undefined;
  readonly parcel?: number;
  readonly undo?: boolean;
  readonly swap?: string;
}

async function mark(
  as: Mark,
  { other, parcel, undo = false, swap: name }: Marked,
  here: Here,
): Promise<Answer> {
  const asked = await askedSwap(name, here);
  if ('asks' in asked) return asked.asks;
  if (!asked.ok) return asked;
  const whole = asked.value;
  const named = other === undefined ? null : personNamed(whole.people, other);
  if (named && !named.ok) return named;
  const isIn = membersIn(whole.people);
  const may = mayMark(as, undo);
  const found = whole.parcels.filter(
    (one) =>
      mine(one, as, here) &&
      (parcel === undefined || one.number === parcel) &&
      (!named?.ok || (as === 'sent' ? one.to : one.from) === named.value.member) &&
      may(one, standingOf(one, isIn)),
  );
  if (found.length === 0)
    return wrong(parcel === undefined ? `swap-none-${as}` : 'swap-no-parcel', {
      got: String(parcel),
      instead: '/swap envelopes',
    });
  await here.facts.swaps.mark(
    whole.swap,
    found.map(({ number }) => number),
    as,
    undo ? null : here.now,
  );
  return reply({
    title: undo ? `Not ${as} after all` : as === 'sent' ? 'In the post' : 'It has come',
    lines:
      found.length <= 5
        ? found.map((one) => parcelWords(one, as, whole, here.say))
        : [`${many(found.length, 'parcel', 'parcels')}.`],
    figures: { parcels: count(found.map(({ number }) => number)) },
  });
}

/** A member marks her own; an organiser, by its number, anybody's. */
const mine = ({ from, to, number }: SwapParcel, as: Mark, { who, given }: Here): boolean =>
  (as === 'sent' ? from : to) === who.id || (who.organiser && given.has('parcel') && number > 0);

/** Which parcels can be marked so: what has come was sent, whether or not anybody said so. */
function mayMark(as: Mark, undo: boolean): (parcel: SwapParcel, is: Standing) => boolean {
  if (undo)
    return as === 'sent'
      ? ({ sentAt, receivedAt }) => sentAt !== null && receivedAt === null
      : ({ receivedAt }) => receivedAt !== null;
  return as === 'sent' ? (_, is) => is === 'to send' : (_, is) => is === 'to send' || is === 'on its way';
}

function parcelWords(
  { from, to, good, count: pieces }: SwapParcel,
  as: Mark,
  { people }: WholeSwap,
  say: Here['say'],
): string {
  const nameOf = namesIn(people);
  return `${piecesWords(good, pieces, say)} ${as === 'sent' ? `to ${nameOf(to)}` : `from ${nameOf(from)}`}.`;
}

export const settle = form({
  name: 'settle',
  summary: 'The settling list: what has come, what is on its way, what is still due',
  examples: ['/swap settle', '/swap settle done:yes'],
  options: { done: yesNo('Whether the swap is done with, for organisers'), swap: bare(whichSwap) },
  keeps: true,
  async run({ done, swap: name }, here) {
    const asked = await askedSwap(name, here, { settled: true });
    if ('asks' in asked) return asked.asks;
    if (!asked.ok) return asked;
    if (done !== undefined && !here.who.organiser)
      return wrong('organisers-only', { what: '/swap settle done:' });
    const state = done ? 'settled' : 'closed';
    if (done !== undefined) await here.facts.swaps.change(asked.value.swap, { state });
    return settled(asked.value, done ?? asked.value.swap.state === 'settled', here);
  },
});

function settled({ swap, people, parcels }: WholeSwap, done: boolean, { say }: Here): Reply {
  const isIn = membersIn(people);
  const by = Map.groupBy(parcels, (parcel) => standingOf(parcel, isIn));
  const many = (is: Standing) => by.get(is)?.length ?? 0;
  const all = accounts(people, parcels, swap.share);
  const known = swap.each === null || swap.good !== null;
  const short = all.filter((one) => one.short > 0.5);
  return reply({
    title: done ? `${swap.name} is settled` : `${swap.name}, settling`,
    lines: [
      `${grouped(many('come'))} of ${grouped(parcels.length - many('dropped'))} parcels have come.`,
      ...(['on its way', 'to send', 'to send back', 'dropped'] as const)
        .filter((is) => many(is) > 0)
        .map((is) => `${SAID[is]}: ${grouped(many(is))}.`),
      ...short.slice(0, 2).map((one) => `${one.name} is short of ${areaWords(one.short, say)}.`),
    ],
    figures: {
      parcels: count(parcels.length),
      come: count(many('come')),
      onItsWay: count(many('on its way')),
      toSend: count(many('to send')),
      toSendBack: count(many('to send back')),
      dropped: count(many('dropped')),
      areaCome: squareInches(all.reduce((sum, { come }) => sum + come, 0)),
    },
    table:
      known && all.length > 0
        ? { columns: ['who', 'has sent', 'has had'], rows: all.map((one) => rowOf(one, say)) }
        : null,
    notes: [...(known ? [`Areas in ${areaUnit(say)}.`] : []), ...due(parcels, people, isIn, say)],
  });
}

const SAID: Readonly<Record<Exclude<Standing, 'come'>, string>> = {
  'on its way': 'On the way',
  'to send': 'Still to be sent',
  'to send back': 'To be sent back',
  dropped: 'Dropped, as somebody is out',
};

function rowOf(
  { name, sent, toSend, come, onItsWay, toCome }: ReturnType<typeof accounts>[number],
  say: Here['say'],
): string[] {
  const of = (now: number, later: number) =>
    `${areaFigure(now, say)}${later > 0.5 ? ` of ${areaFigure(now + later, say)}` : ''}`;
  return [name, of(sent, toSend), of(come, onItsWay + toCome)];
}

/** So many parcels that are due are named. */
const FEW = 5;

/** Who owes whom, the first few. */
function due(
  parcels: readonly SwapParcel[],
  people: WholeSwap['people'],
  isIn: ReadonlySet<string>,
  say: Here['say'],
): string[] {
  const nameOf = namesIn(people);
  const named = parcels
    .map((parcel) => ({ parcel, is: standingOf(parcel, isIn) }))
    .filter(({ is }) => is === 'to send' || is === 'to send back')
    .map(({ parcel, is }) =>
      is === 'to send'
        ? `${nameOf(parcel.from)} has ${piecesWords(parcel.good, parcel.count, say)} to send to ${nameOf(parcel.to)}.`
        : `${nameOf(parcel.to)} has ${piecesWords(parcel.good, parcel.count, say)} to send back to ${nameOf(parcel.from)}.`,
    );
  const more = named.length - FEW;
  return more > 0 ? [...named.slice(0, FEW), `And ${grouped(more)} more.`] : named;
}
