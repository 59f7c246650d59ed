/** A demo of the project that the page can show. */
export interface Site {
  /** The file's name without its ending; what the address calls the site by. */
  readonly name: string;
  readonly title: string;
}

const first = 'courtyard';
const firstText = import.meta.glob<string>('../scenarios/courtyard.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});
const titles = import.meta.glob<string>('../scenarios/*.json', { import: 'title', eager: true });
/** The first is shown at once; the others are fetched when they are asked for. */
const texts = import.meta.glob<string>(['../scenarios/*.json', '!../scenarios/courtyard.json'], {
  query: '?raw',
  import: 'default',
});

const nameOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.json$/, '');

/** The demo sites, the default one first. */
export const demoSites: readonly Site[] = Object.entries(titles)
  .map(([path, title]) => ({ name: nameOf(path), title }))
  .sort((a, b) => Number(b.name === first) - Number(a.name === first) || a.title.localeCompare(b.title, 'en'));

/** A demo's file: at once for the first. Rejects where it cannot be fetched. */
export function demoText(name: string): string | Promise<string> {
  const at = `../scenarios/${name}.json`;
  return firstText[at] ?? texts[at]();
}
