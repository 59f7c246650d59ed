export const USAGE = `tumblebay simulates recirculating ponds and waterfalls: levels, flows, and whether the pond
holds what runs back when the pump stops.

  tumblebay run FILE        simulates the site of a scenario file and puts it through its checks
  tumblebay balance FILE    the running balance: what the site settles to while the pump runs
  tumblebay sketch FILE     the whole scenario file of a site from a sketch, a dozen numbers by tape and bucket
  tumblebay schema          the JSON Schema of scenario files

FILE is a scenario file, or - for standard input.

  --json                    the whole answer as one JSON object, and nothing else
  --display us|metric       shown so, whatever the file says
  --csv OUT                 (run) writes levels and flows as CSV to OUT, always SI
  --every 1min              (run, with --csv) evenly spaced rows instead of one at each step
  --help                    this text

Ends with 0: ran; 1: ran, and a check fails; 2: the file or the call has a problem;
3: no solution, a run that was cut short, or a fault of tumblebay.
`;
