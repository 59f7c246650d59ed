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
  sheet.layOver();
  return sheet;
}
