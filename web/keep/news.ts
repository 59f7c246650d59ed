/** What has to be told of the keeping of sites, until it is answered or another site is opened. */
import type { Put } from './shelf.ts';

export interface News {
  readonly put?: Put;
  /** Another tab has edited the open site. */
  readonly elsewhere?: boolean;
  /** The site of that name was edited in another tab: what was done here stands apart. */
  readonly parted?: string;
  /** The open site was deleted in another tab. */
  readonly deleted?: boolean;
  /** The address names a site that this browser does not keep. */
  readonly gone?: boolean;
  readonly link?: 'cut' | 'newer';
  /** Why a file was not opened. */
  readonly file?: string;
  /** A demo that could not be fetched. */
  readonly unfetched?: string;
  /** A link to the case, to be copied by hand. */
  readonly share?: { readonly link: string; readonly copied: boolean };
  /** A new version of the page waits; takes it into use. */
  readonly version?: () => void;
}

/** What stays of the news when another site is opened. */
export const lasting = ({ version }: News): News => (version ? { version } : {});
