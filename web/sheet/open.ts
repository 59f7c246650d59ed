import type { LitElement } from 'lit';
import './sheet.ts';
import type { SettingOutSheet } from './sheet.ts';

export type SheetGiven = Partial<
  Pick<SettingOutSheet, 'scenario' | 'answer' | 'balance' | 'stops' | 'fill' | 'file' | 'date'>
>;

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** '25 November 2026': the day a sheet is printed. */
export const dayWords = (day: Date): string => `${day.getDate()} ${MONTHS[day.getMonth()]} ${day.getFullYear()}`;

/** Opens the sheet over the page. */
export function openSheet({ scenario, answer, balance, stops, fill, file, date }: SheetGiven): SettingOutSheet {
  const sheet = document.createElement('tb-sheet');
  Object.assign(sheet, { scenario, answer, balance, stops, fill, file, date: date ?? dayWords(new Date()) });
  layOver(sheet, 'sheet-closed');
  return sheet;
}

/** Lays a sheet over the page, which rests under it; where the hand was, it is again when the sheet is closed. */
export function layOver(sheet: LitElement, closed: string): void {
  const before = deepFocus();
  const under = [...document.body.children].filter((each): each is HTMLElement => each instanceof HTMLElement);
  const woken = under.filter((each) => !each.inert);
  sheet.classList.add('sheet');
  for (const each of woken) each.inert = true;
  sheet.addEventListener(closed, () => {
    sheet.remove();
    for (const each of woken) each.inert = false;
    before?.focus();
  });
  document.body.append(sheet);
  void sheet.updateComplete.then(() => sheet.renderRoot.querySelector<HTMLElement>('.back')?.focus());
}

/** What has the focus, inside of elements too. */
function deepFocus(): HTMLElement | undefined {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at instanceof HTMLElement ? at : undefined;
}
