import { type Assumptions, BANDS } from './assume.ts';
import { boreOf } from './pipe-sizes.ts';
import type { BottomFeed, CheckValve, Feed, PipeRun, Plumbing, TopFeed } from './scenario.ts';
import type { SiteFile } from './schema.ts';

type PlumbingFile = SiteFile['plumbing'];
type FeedFile = NonNullable<PlumbingFile['bottomFeed'] | PlumbingFile['topFeed']>;

const ROUGHNESS = 1e-5;

export function defaultPlumbing(file: PlumbingFile, feedsEndIn: string, assume: Assumptions): Plumbing {
  const { bottomFeed, topFeed } = file;
  return {
    main: { ...pipeRun(file.main, 'plumbing.main', assume), checkValve: checkValve(file.main.checkValve, assume) },
    tee: assume.or(file.tee, 'plumbing.tee', lowestEnd(file)),
    bottomFeed: bottomFeed && bottom(bottomFeed, assume),
    topFeed: topFeed && top(topFeed, feedsEndIn, assume),
    profile: file.profile,
    level: file.level,
    leak: file.leak,
  };
}

/** The elevation a tee is given that the file does not: the bottom inlet's, else the top outlet's. */
export function lowestEnd(file: {
  readonly bottomFeed?: { readonly inlet?: number | undefined } | undefined;
  readonly topFeed?: { readonly outlet?: number | undefined } | undefined;
}): number {
  return file.bottomFeed?.inlet ?? file.topFeed?.outlet ?? 0;
}

function pipeRun(file: FeedFile | PlumbingFile['main'], place: string, assume: Assumptions): PipeRun {
  return {
    diameter: file.diameter ?? boreOf(file.size ?? '') ?? 0,
    length: file.length,
    roughness: assume.or(file.roughness, `${place}.roughness`, ROUGHNESS, BANDS.roughness),
    fittings: file.fittings ?? {},
    k: file.k ?? 0,
  };
}

function feed(file: FeedFile, place: string, assume: Assumptions): Feed {
  return {
    ...pipeRun(file, place, assume),
    valve: assume.or(file.valve, `${place}.valve`, 1),
    law: assume.or(file.law, `${place}.law`, 'ball'),
  };
}

const bottom = (file: NonNullable<PlumbingFile['bottomFeed']>, assume: Assumptions): BottomFeed => ({
  ...feed(file, 'plumbing.bottomFeed', assume),
  inlet: file.inlet,
});

function top(file: NonNullable<PlumbingFile['topFeed']>, feedsEndIn: string, assume: Assumptions): TopFeed {
  const to = file.to === undefined || file.to === 'filter' ? feedsEndIn : file.to;
  return { ...feed(file, 'plumbing.topFeed', assume), outlet: file.outlet, to };
}

function checkValve(file: PlumbingFile['main']['checkValve'], assume: Assumptions): CheckValve {
  const place = 'plumbing.main.checkValve';
  if (file === undefined) assume.note(place, true);
  if (file === 'unknown') {
    assume.note(place, 'unknown');
    return { kind: 'unknown' };
  }
  if (typeof file === 'object') return { kind: 'leaking', area: file.leak };
  return { kind: file === false ? 'none' : 'sound' };
}
