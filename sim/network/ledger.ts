/** Rows of the ledger, integrated beside the volumes: water in, water out, and what the pump moved and drew. */
export const LEDGER = {
  hose: 0,
  rain: 1,
  runoff: 2,
  autofill: 3,
  evaporation: 4,
  splash: 5,
  rim: 6,
  overflow: 7,
  filterRim: 8,
  edges: 9,
  leak: 10,
  pumpedOut: 11,
  /** m³ moved forward through the main. */
  pumped: 12,
  /** J drawn at the wire. */
  energy: 13,
  /** m³ that went up through the media. */
  media: 14,
  /** m³ that the media freed of their waste. */
  treated: 15,
} as const;

export const LEDGER_ROWS = 16;
/** Rows below this count water in; from here to `pumped`, water out. */
export const FIRST_OUT = LEDGER.evaporation;
