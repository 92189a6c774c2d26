import { describe, expect, test } from 'vitest';
import { readGuildQuestion } from '../../src/chat/guild-questions.ts';

/** What members type, and the ask that it stands for. */
const MEANT = [
  ['I made two rosettes yesterday', '/log 2 rosettes yesterday'],
  ['2 rosettes yesterday', '/log 2 rosettes yesterday'],
  ['another flower today!', '/log 1 flower today'],
  ['finished 3 rosettes on sunday', '/log 3 rosettes on sunday'],
  ['i’ve sewn 12 hexies', '/log 12 hexies'],
  ['Yesterday I finished one rosette', '/log 1 rosette day:Yesterday'],
  ['please log 4', '/log 4'],
  ['i finished 3 today', '/log 3 today'],
  ['did two yesterday!', '/log 2 yesterday'],
  ['I made another today', '/log 1 today'],
  ['Today I finished 2', '/log 2 day:Today'],
  ['i made a mistake, i only did 2', '/fix pieces:2'],
  ['sorry, I meant 4', '/fix pieces:4'],
  ['that should be 3 not 2', '/fix pieces:3'],
  ['make that 5 rosettes', '/fix pieces:5'],
  ['how many have i done', '/standings'],
  ['how many rosettes did I finish?', '/standings'],
  ['what is my total?', '/standings'],
  ['who has joined?', '/challenge show'],
  ['who’s taking part', '/challenge show'],
  ['when does the challenge end?', '/challenge show'],
  ['what’s our goal', '/challenge show'],
  ['count me in!', '/challenge join'],
  ['I’d like to join the challenge', '/challenge join'],
  ['can I join?', '/challenge join'],
  ['I want to leave the challenge', '/challenge leave'],
  ['count me in for the swap', '/swap join'],
  ['take me out of the swap please', '/swap leave'],
  ['remind us every monday', '/guild set digest:monday'],
  ['take back my last log', '/undo'],
  ['undo that', '/undo'],
  ['delete my last entry', '/undo'],
  ['how are we doing?', '/standings'],
  ['when will we be done?', '/standings'],
  ['which challenges are open?', '/challenge list'],
  ['I have 6 fat quarters florals to swap', '/swap offer 6 fat quarters florals'],
  ['offering 2½in strips x 20 for the swap', '/swap offer 2½in strips x 20'],
  ['I’d like 60 1in hexagons blue from the swap please', '/swap want 60 1in hexagons blue'],
  ['looking for 3 fat quarters in the swap', '/swap want 3 fat quarters'],
  ['what’s on offer?', '/swap list'],
  ['who wants blue in the swap?', '/swap list'],
  ['who do I send to?', '/swap envelopes'],
  ['I finished block 3', '/month done 3'],
  ['which block is it this month?', '/month block'],
  ['show block 4', '/month block 4'],
  ['who has finished which block?', '/month show'],
  ['what do you know about me?', '/me export'],
  ['forget me', '/me forget'],
  ['please stop reminding me', '/me set nudge:off'],
] as const;

/** What is for the calculator, or for nobody, though words of the guild's life stand in it. */
const ELSEWHERE = [
  'how many rosettes from a fat quarter?',
  '2 rosettes',
  'how do I join the corners',
  'join 7 rosettes with a path',
  'can I join the rosettes by machine',
  'make that 3 in hexagons',
  'make it 40 by 60',
  'I made 40 by 60',
  'I finished a row of 3/4',
  'how many hexagons have I to cut for a queen',
  'how many can I make from a yard today',
  '7 rosettes 2 rounds with one path',
  'I have 3 fat quarters, how many 1in hexagons can I cut?',
  'I want 240 hexagons 1in',
  'how many seams in a block of 75 diamonds',
  'how long for 2 rosettes',
  'how many fat quarters do I need for 12 rosettes today?',
];

const asked = (text: string): string | null => {
  const found = readGuildQuestion(text);
  return found && `/${[found.command, found.form, found.words].filter(Boolean).join(' ')}`;
};

describe('what members say of the guild’s life', () => {
  test.each(MEANT)('%s', (text, ask) => {
    expect(asked(text)).toBe(ask);
  });

  test.each(ELSEWHERE)('not: %s', (text) => {
    expect(asked(text)).toBeNull();
  });
});
