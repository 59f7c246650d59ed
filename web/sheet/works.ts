/** Valves, pump and pipes of a sheet. */
import {
  formatFlow,
  formatHead,
  formatLength,
  formatNumber,
  formatPercent,
  formatSpeed,
} from '../../sim/quantity/format.ts';
import { drivenWords, settledWords } from '../../sim/results/asSet.ts';
import { boreOf, PIPE_SIZES } from '../../sim/scenario/pipe-sizes.ts';
import type { FittingName, PipeRun, Scenario } from '../../sim/scenario/scenario.ts';
import type { Block, SheetFacts } from './block.ts';

/** 90° × (1 − opening), from the pipe. */
export const handleDegrees = (opening: number): number => 90 * (1 - Math.min(1, Math.max(0, opening)));

/** 90 × 0.45 is a hair under its half degree in binary figures. */
const ROUNDING = 1e-9;

function handleWords(opening: number): string {
  const angle = Math.round(handleDegrees(opening) + ROUNDING);
  if (angle === 0) return '0° from the pipe: open';
  return angle === 90 ? '90° from the pipe: shut' : `${angle}° from the pipe`;
}

export function valvesBlock({ scenario: s, balance }: SheetFacts): Block {
  const { bottomFeed, topFeed } = s.plumbing;
  const feeds = [
    ['bottom feed', bottomFeed],
    ['top feed', topFeed],
  ] as const;
  const rows = feeds.flatMap(([name, feed]) => {
    if (!feed) return [];
    const flow = balance?.flows[name];
    return [[name, handleWords(feed.valve), flow === undefined ? '' : formatFlow(flow, s.display, balance?.duty.flow)]];
  });
  if (rows.length === 0) return { title: 'Valves', says: ['This site has no valve to set.'] };
  const split = balance?.split;
  const shared = split !== null && split !== undefined && bottomFeed && topFeed;
  return {
    title: 'Valves',
    heads: ['valve', 'handle', 'flow'],
    rows,
    says: [
      ...(shared ? [`${formatPercent(split)} goes up the bottom feed, the rest over the top.`] : []),
      balance
        ? 'A handle’s table is good to a factor of two: turn until the ruler column of the heights is met.'
        : 'Without a running balance there is no ruler’s figure to check the handles by.',
    ],
  };
}

export function pumpBlock({ scenario: s, balance }: SheetFacts): Block {
  if (!balance) return { title: 'Pump', says: ['No running balance was found: the pump’s duty is not known.'] };
  const { flow, head, power, velocity } = balance.duty;
  const watts = power > 0 ? `, drawing ${formatNumber(power)} W` : '';
  const speeds = (['main', 'bottom feed', 'top feed'] as const)
    .filter((name) => velocity[name] !== 0)
    .map((name) => `${formatSpeed(velocity[name], s.display)} in the ${name === 'main' ? 'main line' : name}`);
  const [driven, settled] = [drivenWords(s), settledWords(s)];
  return {
    title: 'Pump',
    says: [
      `${formatFlow(flow, s.display)} at ${formatHead(head, s.display)} of head${watts}${speeds.length ? `; ${speeds.join(', ')}` : ''}.`,
      ...(driven ? [`It is driven at ${driven}: set its drive so before a figure is checked.`] : []),
      ...(settled ? [`All figures here are with ${settled} settled in the media, not with clean ones.`] : []),
    ],
  };
}

/** Fittings one buys: where a pipe begins and ends costs head and no money. */
const FITTINGS: Readonly<Partial<Record<FittingName, string>>> = {
  elbow90: '90° elbow',
  elbow45: '45° elbow',
  ballValve: 'ball valve',
};

const sizeNames = new Map(PIPE_SIZES.map((size) => [boreOf(size), size]));

export function pipeRows({ plumbing, display }: Scenario): string[][] {
  const pipe = (name: string, run: PipeRun | undefined, more: readonly string[]): string[][] => {
    if (!run) return [];
    const size = sizeNames.get(run.diameter) ?? `${formatLength(run.diameter, display)} inside`;
    const bought = Object.entries(FITTINGS).flatMap(([key, name]) => {
      const count = run.fittings[key as FittingName] ?? 0;
      return count > 0 ? [`${formatNumber(count)} × ${name}`] : [];
    });
    const parts = [...bought, ...more].join(', ');
    return [[name, `${formatLength(run.length, display)} of ${size}${parts ? `; ${parts}` : ''}`]];
  };
  const { main, bottomFeed, topFeed } = plumbing;
  const check = main.checkValve.kind === 'none' ? 'no check valve' : '1 check valve';
  return [
    ...pipe('main line', main, [check, ...(bottomFeed && topFeed ? ['1 tee'] : [])]),
    ...pipe('bottom feed', bottomFeed, ['its valve']),
    ...pipe('top feed', topFeed, ['its valve']),
  ];
}
