import { type Assumptions, BANDS, manningBand } from './assume.ts';
import type { BasinParts, Crest, CrestPoint, Leak, Pool, ProfilePoint, Stone, Stream } from './scenario.ts';
import type { SiteFile } from './schema.ts';

type ElementFile = NonNullable<SiteFile['watercourse']>[number];
type PoolFile = Extract<ElementFile, { kind: 'pool' }>;
type StreamFile = Extract<ElementFile, { kind: 'stream' }>;

const STONE_CD = 0.9;
const EDGE_CD = 1;
const MANNING = 0.12;

interface BasinFile {
  readonly profile: readonly ProfilePoint[];
  readonly displaced?: BasinParts['displaced'];
  readonly level?: number | 'empty';
  readonly leak?: Leak;
}

export function basinParts({ profile, displaced, level, leak }: BasinFile): BasinParts {
  return { profile, displaced: displaced ?? [], level, leak };
}

export function defaultCrest(
  file: { readonly crest: readonly CrestPoint[]; readonly cd?: number },
  place: string,
  cd: number,
  assume: Assumptions,
): Crest {
  return { crest: file.crest, cd: assume.or(file.cd, `${place}.cd`, cd) };
}

export function defaultElement(file: ElementFile, place: string, assume: Assumptions): Pool | Stream {
  return file.kind === 'pool' ? defaultPool(file, place, assume) : defaultStream(file, place, assume);
}

function defaultPool(file: PoolFile, place: string, assume: Assumptions): Pool {
  const floor = file.profile[0]?.[0] ?? 0;
  return {
    kind: 'pool',
    name: file.name,
    ...basinParts(file),
    stones: file.stones.map((stone, i) => defaultStone(stone, floor, `${place}.stones[${i}]`, assume)),
    rim: defaultCrest(file.rim, `${place}.rim`, EDGE_CD, assume),
  };
}

function defaultStone(file: PoolFile['stones'][number], floor: number, place: string, assume: Assumptions): Stone {
  // With its length along the flow a stone's coefficient follows from the head, and none is assumed.
  const cd =
    file.along === undefined ? assume.or(file.cd, `${place}.cd`, STONE_CD, BANDS.stone) : (file.cd ?? STONE_CD);
  return {
    name: file.name,
    main: file.main ?? false,
    crest: file.crest,
    cd,
    along: file.along,
    nose: file.nose ?? 0,
    seep: { k: file.seep?.k ?? 0, foot: file.seep?.foot ?? floor },
    fall: file.fall ?? 0,
    splash: file.splash ?? 0,
    blockage: file.blockage ?? 0,
  };
}

function defaultStream(file: StreamFile, place: string, assume: Assumptions): Stream {
  const { edge } = file;
  return {
    kind: 'stream',
    name: file.name,
    length: file.length,
    width: file.width,
    slope: file.slope,
    manning: assume.or(file.manning, `${place}.manning`, MANNING, manningBand(MANNING)),
    foot: file.foot,
    blockage: file.blockage ?? 0,
    edge: edge && { ...edge, cd: assume.or(edge.cd, `${place}.edge.cd`, EDGE_CD) },
    level: file.level,
    leak: file.leak,
  };
}
