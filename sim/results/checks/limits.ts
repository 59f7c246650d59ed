/** Our default: the greatest share of the bottom feed that may slip round the media. */
export const MOST_CHANNELED = 0.1;
