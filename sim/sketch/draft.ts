import { isObject } from '../scenario/fields.ts';
import { filter as filterKeys } from '../scenario/keys/filter.ts';
import { plumbing as plumbingKeys } from '../scenario/keys/plumbing.ts';
import { pond as pondKeys, pump as pumpKeys } from '../scenario/keys/pond.ts';
import { boreOf } from '../scenario/pipe-sizes.ts';
import { areaAt } from '../scenario/profile.ts';
import type { PartlyFile } from '../scenario/schema.ts';
import { PLAN_FACTORS } from '../scenario/shapes.ts';
import { designFlow, type SketchPipe } from './designFlow.ts';
import { ENTRANCE_LOSS, FEED, FILTER } from './layout.ts';
import type { SketchValue } from './number.ts';
import { sketchNumber } from './numbers.ts';
import { layOver } from './overlay.ts';
import { mainPipe, plumbingPart } from './plumbing.ts';
import { tidy } from './units.ts';

const silent = () => {};

/** What the pond measures at its water line, m and m². */
export interface Measures {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly area: number;
  /** Elevations of its fill mark and its lowest edge. */
  readonly mark: number;
  readonly edge: number;
}

/**
 * A site while it is expanded: the sketch's numbers as typed or by their defaults, and what follows from them and from
 * the parts given beside. Each figure is found once, when something asks for it.
 */
export class Draft {
  /** The file's parts beside its sketch. */
  readonly beside: Readonly<Record<string, unknown>>;
  private readonly sketch: unknown;
  private readonly typed: ReadonlyMap<string, SketchValue>;
  private readonly found = new Map<string, unknown>();

  constructor(given: Readonly<Record<string, unknown>>, typed: ReadonlyMap<string, SketchValue>) {
    const { sketch, ...beside } = given;
    this.beside = beside;
    this.sketch = sketch;
    this.typed = typed;
  }

  isTyped(key: string): boolean {
    return this.typed.has(key);
  }

  value(key: string): SketchValue {
    return this.once(`number ${key}`, () => {
      const typed = this.typed.get(key);
      return typed ?? sketchNumber(key)?.fallback?.(this) ?? 0;
    });
  }

  number(key: string): number {
    const value = this.value(key);
    return typeof value === 'number' ? value : 0;
  }

  word(key: string): string {
    return String(this.value(key));
  }

  /** What was typed for a number, so that a reader sees the typed unit; undefined where nothing was. */
  raw(key: string): unknown {
    if (!this.isTyped(key)) return undefined;
    return key.split('.').reduce<unknown>((part, name) => (isObject(part) ? part[name] : undefined), this.sketch);
  }

  /** A number as the expanded file has it: as it was typed, or its default in SI. */
  figure(key: string): unknown {
    return this.raw(key) ?? tidy(this.number(key));
  }

  get pond(): Measures {
    return this.once('pond', () => {
      const pond = this.read<PartlyFile['pond']>('pond', pondKeys);
      const mark = pond?.fillMark ?? (typeof pond?.level === 'number' ? pond.level : 0);
      const edge = lowest(pond?.rim?.crest) ?? this.number('edge');
      const length = pond?.shape?.length ?? this.number('length');
      const width = pond?.shape?.width ?? this.number('width');
      const [bottom] = pond?.profile?.[0] ?? [];
      if (pond?.profile && bottom !== undefined) {
        return { length, width, depth: mark - bottom, area: areaAt(pond.profile, mark), mark, edge };
      }
      const shape = pond?.shape;
      const factor = shape?.factor ?? (shape?.plan ? PLAN_FACTORS[shape.plan] : planFactor(this.value('plan')));
      const depth = (shape?.depth ?? this.number('depth')) + mark - (shape?.brim ?? 0);
      return { length, width, depth, area: factor * length * width, mark, edge };
    });
  }

  /** Most flow of the pump, m³/s: the box's, or its curve's last point. */
  get boxFlow(): number {
    const { curve } = this;
    return 'flow' in curve ? curve.flow : (curve.at(-1)?.[0] ?? 0);
  }

  get curve(): { readonly flow: number; readonly head: number } | readonly (readonly [number, number])[] {
    return this.once('curve', () => {
      const laid = layOver({ curve: this.raw('pump') }, this.beside['pump']);
      const read = pumpKeys.read(laid, '', silent)?.curve;
      return (isWhole(read) ? read : this.value('pump')) as Draft['curve'];
    });
  }

  /** Elevation of the filter's lip, m. */
  get lip(): number {
    return lowest(this.filter?.lip?.crest) ?? this.pond.mark + this.number('lip');
  }

  /** Width of the filter's lip, m. */
  get lipWidth(): number {
    return widthOf(this.filter?.lip?.crest) ?? this.number('lipWidth');
  }

  /** The filter's parts that were given beside the sketch. */
  get filter(): PartlyFile['filter'] {
    return this.once('filter', () => this.read<PartlyFile['filter']>('filter', filterKeys));
  }

  /** Elevation the pump lifts to: the top feed's open end, or the lip. */
  get lift(): number {
    const { topFeed } = this.plumbing ?? {};
    return topFeed?.outlet ?? (this.word('feeds') === 'bottom' ? this.lip : this.lip + FILTER.outlet);
  }

  get designFlow(): number {
    return this.once('design flow', () => {
      const { bottomFeed, topFeed, main } = this.plumbing ?? {};
      const feeds = [bottomFeed, topFeed].filter((feed) => feed !== undefined);
      return designFlow({
        curve: this.curve,
        main: pipeOf(main, mainPipe(this)),
        mainLoss: ENTRANCE_LOSS + (main?.k ?? 0),
        feed: pipeOf(feeds[0], { bore: 0.04, ...FEED }),
        feeds: Math.max(1, feeds.length),
        lift: this.lift - this.pond.mark,
      });
    });
  }

  /** The plumbing as it will stand. */
  private get plumbing(): PartlyFile['plumbing'] {
    return this.once('plumbing', () => {
      const laid = layOver(plumbingPart(this), this.beside['plumbing']);
      return plumbingKeys.read(laid, '', silent) as PartlyFile['plumbing'];
    });
  }

  private read<T>(part: string, keys: { read: (value: unknown, place: string, tell: () => void) => unknown }): T {
    const given = this.beside[part];
    return (isObject(given) ? keys.read(given, '', silent) : undefined) as T;
  }

  private once<T>(name: string, find: () => T): T {
    if (!this.found.has(name)) this.found.set(name, find());
    return this.found.get(name) as T;
  }
}

/** Whether a curve could be read to its last figure. */
const isWhole = (curve: unknown): boolean =>
  Array.isArray(curve) || (isObject(curve) && curve['flow'] !== undefined && curve['head'] !== undefined);

interface PipeRead {
  readonly diameter?: number | undefined;
  readonly size?: string | undefined;
  readonly length?: number | undefined;
  readonly fittings?: { readonly elbow90?: number | undefined } | undefined;
}

function pipeOf(read: PipeRead | undefined, otherwise: SketchPipe): SketchPipe {
  return {
    bore: read?.diameter ?? boreOf(read?.size ?? '') ?? otherwise.bore,
    length: read?.length ?? otherwise.length,
    elbows: read?.fittings?.elbow90 ?? 0,
  };
}

export const planFactor = (plan: SketchValue): number =>
  typeof plan === 'number' ? plan : PLAN_FACTORS[plan === 'oval' ? 'ellipse' : (plan as keyof typeof PLAN_FACTORS)];

type Line = readonly (readonly [number, number])[] | undefined;

const lowest = (line: Line): number | undefined => line && Math.min(...line.map(([, z]) => z));
const widthOf = (line: Line): number | undefined => line && (line.at(-1)?.[0] ?? 0) - (line[0]?.[0] ?? 0);
