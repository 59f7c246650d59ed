export const USAGE = `tumblebay simulates recirculating ponds and waterfalls: levels, flows, and whether the pond
holds what runs back when the pump stops.

  tumblebay run FILE        simulates the site of a scenario file and puts it through its checks
  tumblebay balance FILE    the running balance: what the site settles to while the pump runs
  tumblebay fill FILE       when the pond is full and the hose is to be shut, mark by mark
  tumblebay leak FILE LOG   whether the pond loses more than evaporation and splash explain, by a log of its levels
  tumblebay map FILE        the running balance at every setting of the two valves, and where all its checks hold
  tumblebay dye FILE        how long water stays in the filter, through the media and round them, by a pulse of dye
  tumblebay sketch FILE     the whole scenario file of a site from a sketch, a dozen numbers by tape and bucket
  tumblebay schema          the JSON Schema of scenario files

FILE is a scenario file, LOG a text with a time and a level on each line, or - for standard input.

  --json                    the whole answer as one JSON object, and nothing else
  --display us|metric       shown so, whatever the file says
  --csv OUT                 (run, fill) writes levels and flows as CSV to OUT, (map) a row a setting, (dye) the curve, always SI
  --every 1min              (run, with --csv) evenly spaced rows instead of one at each step
  --pump                    (fill) starts the pump when the pond is at its mark, and fills on
  --by 07:30                (fill) opens the hose as late as will do
  --nights 22:00-07:00      (fill) shuts the hoses every night
  --zone Europe/Berlin      (fill) the clock of a time zone, summer time and all
  --ics OUT                 (fill, with --zone) writes a calendar file that rings when the hose is to be shut
  --ruler                   (leak) levels are read on a ruler standing in the water, not down from the edge
  --plane valves|flow       (map) over both valves' openings, or over pump speed and share by the bottom feed
  --bottom 0,0.5,1          (map) openings of the bottom valve, 0 shut to 1 open; --top likewise
  --at 2h                   (dye) at a moment of the run; else its start, or when the filter is first fed
  --help                    this text

Ends with 0: ran; 1: ran, and a check fails, the pond is never full or it leaks; 2: the file or the call has a problem;
3: no solution, a run that was cut short, or a fault of tumblebay.
`;
