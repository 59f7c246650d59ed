import { css } from 'lit';

export const headStyles = css`
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 28px;
    min-height: 56px;
    border-bottom: 0.8px solid var(--rule);
    position: relative;
    z-index: 2;
  }
  h1 {
    margin: 0;
    font-size: 19px;
    line-height: 24px;
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .site {
    flex: 0 1 auto;
    min-width: 0;
  }
  .site > summary {
    color: var(--ink);
    font-style: normal;
  }
  .sheet {
    position: absolute;
    left: -16px;
    top: 100%;
    min-width: min(400px, 100% + 32px);
    max-height: 80vh;
    overflow: auto;
    padding: 8px 20px 16px 16px;
    background: var(--paper);
    border: 0 solid var(--ink);
    border-width: 0 1.3px 1.3px 0;
  }
  .sheet .note {
    margin: 12px 0 0;
  }
  .sheet p[role] {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 12px;
    margin: 8px 0 0;
    line-height: 20px;
  }
  .sheet p button {
    color: var(--ink);
    text-decoration: underline 1px;
  }
  .sheet .line {
    display: block;
  }
  .sheet button,
  .sheet .file {
    margin-right: 20px;
  }
  .own {
    display: flex;
    align-items: center;
    gap: 0 12px;
  }
  .own > :first-child {
    text-align: left;
  }
  .sheet .own button {
    flex: none;
    margin-right: 0;
    line-height: 20px;
  }
  .sheet .own > :first-child {
    flex: 1 1 0;
  }
  .sheet .own .note {
    margin: 0;
    white-space: nowrap;
  }
  .name,
  .share label {
    display: flex;
    align-items: center;
    gap: 12px;
    font-size: 14px;
    font-style: italic;
    color: var(--ink2);
  }
  .name input,
  .share input {
    flex: 1 1 auto;
    min-width: 0;
    min-height: 44px;
    font: inherit;
    font-size: 16px;
    font-style: normal;
    color: var(--ink);
    background: transparent;
    border: 0;
    border-bottom: 1px solid var(--ink2);
    border-radius: 0;
    text-overflow: ellipsis;
  }
  .share,
  .caution {
    margin-bottom: 16px;
  }
  .share p {
    margin: 0;
  }
  .share button,
  .caution button {
    margin-right: 20px;
  }
  nav {
    display: flex;
    flex: 1 1 auto;
    justify-content: center;
    gap: 0 16px;
    font-size: 14px;
  }
  nav button,
  .presses button,
  .sheet button {
    text-decoration: none;
    color: var(--ink2);
  }
  nav .asked,
  button[aria-pressed='true'] {
    color: var(--ink);
    box-shadow: inset 0 -2px 0 var(--ink);
  }
  nav button {
    min-height: 56px;
  }
  nav .others {
    display: none;
  }
  .presses {
    display: flex;
    gap: 0 14px;
    font-size: 14px;
  }
  .presses > div {
    display: flex;
    gap: 4px;
  }
  .presses button {
    min-width: 44px;
  }
  button[disabled] {
    color: var(--ink3);
    cursor: default;
  }
  .file {
    position: relative;
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    color: var(--ink2);
  }
  .file input {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    opacity: 0;
    cursor: pointer;
  }
  .file:focus-within {
    outline: 2px solid var(--ink);
    outline-offset: 2px;
  }
  /* Shadows are not drawn in the reader's own colors. */
  @media (forced-colors: active) {
    nav .asked,
    button[aria-pressed='true'] {
      text-decoration: underline 3px;
    }
  }
  @media (min-width: 1400px) {
    .site {
      max-width: 176px;
    }
  }
  @media (max-width: 1279px) {
    header {
      gap: 0 20px;
    }
    .site {
      flex: 1 1 0;
    }
    nav {
      order: 3;
      flex-basis: 100%;
      justify-content: flex-start;
    }
    nav button {
      min-height: 44px;
    }
  }
  @media (max-width: 899px) {
    header {
      gap: 0 12px;
      min-height: 44px;
    }
    h1 {
      font-size: 17px;
      line-height: 20px;
    }
    .presses {
      gap: 0 8px;
    }
    .presses > div {
      gap: 0;
    }
    nav {
      flex-wrap: wrap;
      justify-content: space-between;
      gap: 0 12px;
    }
    nav button {
      text-align: left;
      line-height: 19px;
    }
    nav .asked {
      flex: 1 1 0;
      font-style: italic;
      box-shadow: none;
    }
    nav .others {
      display: inline;
      order: 1;
      text-decoration: underline 1px;
      text-underline-offset: 5px;
    }
    nav .other {
      display: none;
    }
    nav.open .other {
      display: block;
      order: 2;
      flex-basis: 100%;
    }
  }
`;
