export { openFile, share } from './deeds.ts';
export { sheetView } from './sheet.ts';
export { newsView } from './told.ts';
export { watchVersions } from './versions.ts';
