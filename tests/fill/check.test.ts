/** What the check ‘filling’ says of hoses that are shut, of losses and of trickles. */
import { describe, expect, test } from 'vitest';
import { fillingCheck } from '../../sim/results/checks/filling.ts';
import { siteOf } from './sites.ts';

const check = (change: Parameters<typeof siteOf>[0]) => fillingCheck({ scenario: siteOf(change), balance: undefined });

describe('the check filling', () => {
  test('keeps to the hours in which the file shuts the hose', () => {
    const shut = check((file) => {
      file.supply.hose.meter = 1;
      file.actions = [
        { at: 0, do: 'hose', to: 'on' },
        { at: '4 h', do: 'hose', to: 'off' },
        { at: '13 h', do: 'hose', to: 'on' },
      ];
    });
    // 7 h 18 min of hose and 9 h of night.
    expect(shut?.says).toContain('in 16 h 18 min, at 2 Jun 10:17');
    expect(shut?.says).toContain('with 8,756 L');
    expect(shut?.says).toContain('The meter then reads 9.756 m³');
  });

  test('reckons with evaporation', () => {
    const loss = (12 * 0.02) / 86400;
    const sunny = check((file) => (file.weather = { evaporation: '20 mm/d' }));
    expect((sunny?.value ?? 0) / (8.756 / (20e-3 / 60 - loss))).toBeCloseTo(1, 3);
  });

  test('says why it is never full', () => {
    const off = check((file) => {
      file.actions = [
        { at: 0, do: 'hose', to: 'on' },
        { at: '4 h', do: 'hose', to: 'off' },
      ];
    });
    expect(off).toMatchObject({ value: null, t: null });
    expect(off?.says).toBe('The hose (20.0 L/min) never brings the pond to its mark: it is shut before then.');
    expect(check((file) => (file.supply.hose.flow = 1e-7))?.says).toContain('more than three months');
    expect(check((file) => (file.supply.hose.flow = 0))).toBeUndefined();
  });
});
