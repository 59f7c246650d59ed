/** The trade's words for what the record calls by short names; any other name is the site's own and stays. */
const basins: Record<string, string> = {
  pond: 'pond',
  vault: 'pump vault',
  riser: 'water in the pipe',
  filter: 'filter',
};

const flows: Record<string, string> = {
  main: 'main line',
  media: 'through the media',
  gap: 'gap round the mats',
  intake: 'through the intake',
  'vault spill': 'over the vault’s edge',
  lip: 'over the filter’s lip',
  'filter rim': 'over the filter’s rim',
  rim: 'over the pond’s edge',
  overflow: 'overflow pipe',
  leak: 'leaks',
};

export const basinName = (name: string): string => basins[name] ?? name;
export const flowName = (name: string): string => flows[name] ?? name;
