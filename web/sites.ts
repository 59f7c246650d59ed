/** A site the page can show: a demo of the project, or a file somebody opened. */
export interface Site {
  /** The file's name without its ending; what the address calls the site by. */
  name: string;
  title: string;
  text: string;
}

const files = import.meta.glob<string>('../scenarios/*.json', { query: '?raw', import: 'default', eager: true });

/** The title a file gives, or its name where it gives none or cannot be read. */
export function siteOf(name: string, text: string): Site {
  let title: unknown;
  try {
    title = JSON.parse(text)?.title;
  } catch {
    // What is wrong with the text is told by the reader of sites, with its place.
  }
  return { name, title: typeof title === 'string' && title !== '' ? title : name, text };
}

const first = 'courtyard';

/** The demo sites, the default one first. */
export const demoSites: readonly Site[] = Object.entries(files)
  .map(([path, text]) => siteOf(path.replace(/^.*\//, '').replace(/\.json$/, ''), text))
  .sort((a, b) => Number(b.name === first) - Number(a.name === first) || a.title.localeCompare(b.title, 'en'));

/** The site the address names, '#courtyard', so that a reload and a link show the same. */
export function siteByAddress(): Site | undefined {
  const asked = location.hash.slice(1);
  return demoSites.find(({ name }) => encodeURIComponent(name) === asked);
}
