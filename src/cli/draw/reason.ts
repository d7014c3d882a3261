/**
 * Why does each alternative score as it does? Its findings in sentences, worst first, each with
 * what the overall would gain without it. What holds for every alternative is told once, at the
 * end, so that what tells them apart stands out.
 */
import type { Build } from '../../build/build.ts';
import type { ScoreSheet } from '../../score/comparison.ts';
import type { Evidence } from '../../score/evidence.ts';
import { gainWithout } from '../../score/headline.ts';
import { scoreNames } from '../../score/name.ts';
import { sentenceOf } from '../../score/sentence.ts';
import { harmless, type Screen, styled } from './screen.ts';
import { hanging } from './table.ts';

/** So many findings of each sort are told; a page should be read to its end. */
const mostCostly = 10;
/** Findings that would gain less are told only among the first few. */
const leastGain = 0.05;
const alwaysTold = 3;
const mostOthers = 5;
const indent = 24;
const nameWidth = 17;

interface Reason {
  readonly evidence: Evidence;
  readonly sentence: string;
  /** Points of the overall that this finding takes; 0 for praise and remarks. */
  readonly gain: number;
}

/** Reasons of every alternative, then those that all share. */
export function reasonLines(
  screen: Screen,
  build: Build,
  alternatives: readonly ScoreSheet[],
): string[] {
  const reasons = alternatives.map((sheet) => reasonsOf(sheet, build));
  const counts = new Map<string, number>();
  for (const { sentence } of reasons.flat()) counts.set(sentence, (counts.get(sentence) ?? 0) + 1);
  const isShared = ({ sentence }: Reason): boolean =>
    alternatives.length > 1 && counts.get(sentence) === alternatives.length;
  const most = new Map<string, number>();
  for (const { sentence, gain } of reasons.flat()) {
    most.set(sentence, Math.max(gain, most.get(sentence) ?? 0));
  }
  const shared = (reasons[0] ?? [])
    .filter(isShared)
    .map((reason) => ({ ...reason, gain: most.get(reason.sentence) ?? reason.gain }));
  return [
    ...hanging(
      screen,
      '',
      0,
      'Reasons, worst first; +n is what the overall would gain without that finding.',
    ),
    ...alternatives.flatMap((sheet, at) => {
      const own = (reasons[at] ?? []).filter((reason) => !isShared(reason));
      const title = `${sheet.letter}  ${harmless(sheet.name)}: ${Math.round(sheet.overall)} overall`;
      return [
        '',
        ...hanging(screen, '', 0, styled(screen, 'bold', title)),
        ...sheet.broken.flatMap((sentence) =>
          hanging(screen, '      Rule broken', indent, harmless(sentence)),
        ),
        ...told(screen, own, 'Nothing of its own counts against it.'),
      ];
    }),
    ...(shared.length === 0
      ? []
      : [
          '',
          ...hanging(
            screen,
            '',
            0,
            `${styled(screen, 'bold', 'The same for all of them')}; +n is the most any would gain.`,
          ),
          ...told(screen, shared, 'Nothing counts against them.'),
        ]),
  ];
}

function reasonsOf(sheet: ScoreSheet, { weights }: Build): Reason[] {
  return sheet.evidence.map((one) => ({
    evidence: one,
    sentence: sentenceOf(one),
    gain: gainWithout(sheet, one, weights),
  }));
}

function told(screen: Screen, reasons: readonly Reason[], ifNone: string): string[] {
  const costly = reasons.filter(({ evidence }) => evidence.cost > 0);
  const others = reasons.filter(({ evidence }) => evidence.cost <= 0);
  const line = ({ evidence, sentence, gain }: Reason): string[] => {
    const points = gain < leastGain ? '' : `+${gain < 9.95 ? gain.toFixed(1) : Math.round(gain)}`;
    const title = `${points.padStart(5)} ${scoreNames[evidence.score].padEnd(nameWidth)}`;
    return hanging(screen, title, indent, harmless(sentence));
  };
  const first = costly
    .filter(({ gain }, at) => at < alwaysTold || gain >= leastGain)
    .slice(0, mostCostly);
  const left = costly.length - first.length + Math.max(0, others.length - mostOthers);
  return [
    ...(first.length === 0 ? hanging(screen, '', 6, ifNone) : first.flatMap(line)),
    ...others.slice(0, mostOthers).flatMap(line),
    ...(left === 0
      ? []
      : hanging(screen, '', 6, styled(screen, 'dim', `and ${left} lesser; --json tells all`))),
  ];
}
