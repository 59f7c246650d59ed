/** Dials of the works: check valve, feed valves, the gap round the mats, the pump. */
import { valueAt } from '../../sim/studies/place.ts';
import { settingIn } from '../../sim/studies/setting.ts';
import { type Choice, type Dialed, figure, type Option, option, type Ruler, ruler } from './dials-kinds.ts';

const CHECK_VALVE = 'plumbing.main.checkValve';

/** Sound or none; and what the file says beside, that it leaks or isn't known, for as long as it does or did. */
export function checkValve(site: Dialed): Choice {
  const [now, opened] = [site.file, site.opened].map((file) => valueAt(file, CHECK_VALVE));
  const other = isOther(now) ? now : opened;
  const others: Option[] = isOther(other)
    ? [{ word: otherWord(other), chosen: isOther(now), edits: [[CHECK_VALVE, other]] }]
    : [];
  return {
    kind: 'choice',
    name: 'check valve',
    options: [
      option(site, 'sound', isSound(now), isSound(opened), [[CHECK_VALVE, true]]),
      option(site, 'none', now === false, opened === false, [[CHECK_VALVE, false]]),
      ...others,
    ],
    note: '',
  };
}

/** A file that says nothing of it is taken to have a sound one. */
const isSound = (value: unknown): boolean => value === true || value === undefined;
const isOther = (value: unknown): boolean => !isSound(value) && value !== false;
const otherWord = (value: unknown): string => (typeof value === 'object' && value !== null ? 'leaks' : 'not known');

/** A handle stands in line with its pipe where the valve is open, across it where it is shut. */
const handleWords = (opening: number): string => `handle ${Math.round(90 * (1 - opening))}° from the pipe`;

export function valve(site: Dialed, feed: 'bottomFeed' | 'topFeed'): Ruler | undefined {
  const there = site.now.plumbing[feed];
  if (!there) return undefined;
  const name = feed === 'bottomFeed' ? 'bottom feed’s valve' : 'top feed’s valve';
  const setting = figure(`plumbing.${feed}.valve`, 'fraction');
  return ruler(site, name, setting, [0, 1], there.valve, handleWords(settingIn(site.file, setting) ?? there.valve));
}

export function gap(site: Dialed): Ruler | undefined {
  const media = site.now.filter?.media;
  return media && ruler(site, 'gap round the mats', figure('filter.media.gap', 'length'), [0, 0.03], media.gap);
}

/** A pump that is off at the start needs a start at rest; one that is on starts in its balance. */
export function pump(site: Dialed): Choice {
  const stands = valueAt(site.file, 'pump.running') !== false;
  const stood = valueAt(site.opened, 'pump.running') !== false;
  return {
    kind: 'choice',
    name: 'pump at the start',
    options: [
      option(site, 'on', stands, stood, [
        ['pump.running', undefined],
        ['start', undefined],
      ]),
      option(site, 'off', !stands, !stood, [
        ['pump.running', false],
        ['start', 'overnight'],
      ]),
    ],
    note: '',
  };
}
