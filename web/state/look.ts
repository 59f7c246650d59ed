/** Paper, slate or stark: chosen on the page and kept by the browser, else by what the system prefers. */

export const looks = ['paper', 'slate', 'stark'] as const;
export type Look = (typeof looks)[number];

const KEY = 'tumblebay look';

function preferred(): Look {
  if (matchMedia('(prefers-contrast: more)').matches) return 'stark';
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'slate' : 'paper';
}

/** The browser may keep nothing for us, or refuse to say. */
function keptLook(): Look | undefined {
  try {
    return looks.find((look) => look === localStorage.getItem(KEY));
  } catch {
    return undefined;
  }
}

/** The look the page opens in, put in force. */
export function openingLook(): Look {
  const look = keptLook() ?? preferred();
  document.documentElement.dataset['look'] = look;
  return look;
}

export function chooseLook(look: Look): void {
  document.documentElement.dataset['look'] = look;
  try {
    localStorage.setItem(KEY, look);
  } catch {
    // The choice then lasts as long as the page.
  }
}
