/** `tumblebay fill` as a shell calls it: what it prints, what it writes, and how it ends. */
import { copyFileSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import type { FillPlan } from '../../sim/fill/plan.ts';
import { changed, courtyard, root, tumblebay } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'fill-'));
const EMPTY = changed(courtyard, (site) => {
  delete site.start;
  site.pond.level = 'empty';
  site.starts = '2031-03-29T21:00';
  site.supply.hose.meter = '12.5 m3';
});
const fill = (...options: string[]) => tumblebay(['fill', '-', ...options], EMPTY);

describe('the command fill', () => {
  test('prints when to open and to shut, the marks and the cautions', () => {
    const { code, out } = fill();
    expect(code).toBe(0);
    expect(out).toMatch(/^open +21:00$/m);
    expect(out).toMatch(/^shut +Sun 30 Mar 01:51$/m);
    expect(out).toMatch(/^moved most by +the bucket test$/m);
    expect(out).toMatch(/^half depth +−480 mm +22:46 /m);
    expect(out).toContain('16.575 m³');
    expect(out).toContain('never left alone');
    expect(out).toContain('siphon');
  });

  test('with the pump started at the mark, in a zone, over the change to summer time', () => {
    const ics = join(folder, 'shut.ics');
    const csv = join(folder, 'levels.csv');
    const { code, out } = fill('--pump', '--zone', 'Europe/Berlin', '--ics', ics, '--csv', csv, '--json');
    expect(code).toBe(0);
    const plan: FillPlan = JSON.parse(out);
    // 6 h 56 min from 21:00, an hour of which the clock skips.
    expect(plan.full?.clock).toBe('Sun 30 Mar 04:56');
    expect(plan.upstairs?.falls).toBeGreaterThan(0.1);
    const calendar = new ICAL.Component(ICAL.parse(readFileSync(ics, 'utf8')));
    const event = calendar.getFirstSubcomponent('vevent') as ICAL.Component;
    const begin = (event.getFirstPropertyValue('dtstart') as ICAL.Time).toJSDate();
    // 21:00 in Berlin in winter is 20:00 UTC.
    expect(begin.getTime()).toBe(Date.UTC(2031, 2, 29, 20) + Math.floor(plan.full?.t ?? 0) * 1000);
    expect(event.getFirstPropertyValue('description')).toContain('The meter of hose then reads');
    const rows = readFileSync(csv, 'utf8').trimEnd().split('\r\n');
    expect(rows[0]).toBe('t[s],clock,pond[m],vault[m],run in[m3]');
    expect(rows.length - 1).toBe(plan.series.t.length);
  });

  test('opens as late as will do, and not by night', () => {
    expect(fill('--by', '07:30').out).toMatch(/^open +Sun 30 Mar 02:3[89]$/m);
    expect(fill('--nights', '22:00-07:00').out).toMatch(/^shut +Sun 30 Mar 10:51$/m);
    const late = fill('--by', '23:00');
    expect(late.code).toBe(2);
    expect(late.err).toContain('--by: found too little time until then');
  });

  test('tells a call that makes no sense, and leaves the site’s file alone', () => {
    const { code, err } = fill('--zone', 'Mars/Base', '--by', '25:00', '--nights', '22');
    expect(code).toBe(2);
    expect(err.trim().split('\n')).toHaveLength(3);
    expect(fill('--ics', 'shut.ics').err).toContain('--ics: found it without --zone');
    const site = join(folder, 'site.json');
    copyFileSync(join(root, courtyard), site);
    const over = tumblebay(['fill', site, '--zone', 'UTC', '--ics', site]);
    expect(over.code).toBe(2);
    expect(over.err).toContain('the scenario file itself');
  });

  test('ends with 1 where the pond is never full, with 2 where no hose is', () => {
    const weak = changed(courtyard, (site) => {
      site.pond.level = -0.3;
      site.start = 'standing';
      site.supply.hose.flow = '0.01 L/min';
    });
    const never = tumblebay(['fill', '-'], weak);
    expect(never.code).toBe(1);
    expect(never.out).toMatch(/^full +never: as much is lost as runs in$/m);
    expect(tumblebay(['fill', '-', '--zone', 'UTC', '--ics', join(folder, 'no.ics')], weak).code).toBe(2);
    const none = tumblebay(
      ['fill', '-'],
      changed(courtyard, (site) => delete site.supply),
    );
    expect(none.code).toBe(2);
    expect(none.err).toContain('supply.hose');
  });

  test('says so where the pond is full', () => {
    const full = changed(courtyard, (site) => {
      site.pond.level = site.pond.fillMark;
    });
    expect(tumblebay(['fill', '-'], full).out).toContain('already');
  });

  test('fills a pond of which the file names no level from empty', () => {
    const unnamed = tumblebay(['fill', courtyard]).out;
    const empty = changed(courtyard, (site) => {
      delete site.start;
      site.pond.level = 'empty';
    });
    expect(unnamed).toBe(tumblebay(['fill', '-'], empty).out);
  });
});
