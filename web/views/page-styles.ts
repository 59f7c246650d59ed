import { css } from 'lit';

export const pageStyles = css`
  :host {
    max-width: 1440px;
    margin: 0 auto;
    padding: 0 16px 32px;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 24px;
    min-height: 56px;
    border-bottom: 0.8px solid var(--rule);
  }
  h1 {
    margin: 0;
    font-size: 19px;
    line-height: 44px;
    font-weight: 400;
    font-style: italic;
  }
  label,
  .units {
    color: var(--ink2);
  }
  .choice {
    display: flex;
    align-items: center;
    gap: 8px;
    flex: 1 1 240px;
    min-width: 0;
  }
  select {
    flex: 1;
    min-width: 0;
    max-width: 420px;
    text-overflow: ellipsis;
  }
  select option {
    background: var(--paper2);
    color: var(--ink);
  }
  .units {
    display: flex;
    gap: 12px;
  }
  .file {
    position: relative;
    display: flex;
    align-items: center;
    min-height: 44px;
    color: var(--ink);
    text-decoration: underline 1px;
    text-underline-offset: 5px;
  }
  .file input {
    position: absolute;
    inset: 0;
    width: 100%;
    opacity: 0;
    cursor: pointer;
  }
  .file:focus-within {
    outline: 2px solid var(--ink);
    outline-offset: 2px;
  }
  main {
    position: relative;
    padding-top: 16px;
  }
  .note[role='status'] {
    position: absolute;
    top: 0;
    margin: 0;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: 0;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .run[aria-busy='true'] {
    opacity: 0.55;
  }
  .site {
    font-size: 24px;
    line-height: 30px;
    font-weight: 400;
    margin: 0;
  }
  .caution {
    border-left: 3px solid var(--ink);
    padding-left: 12px;
  }
  .run > *,
  .trouble {
    margin-bottom: 24px;
    min-width: 0;
  }
  .side > * {
    margin-bottom: 20px;
  }
  .trouble p {
    max-width: 80ch;
    overflow-wrap: anywhere;
  }
  footer {
    border-top: 0.8px solid var(--rule);
    padding-top: 16px;
    font-size: 14px;
    line-height: 19px;
    color: var(--ink2);
  }
  @media (min-width: 1000px) {
    :host {
      padding: 0 40px 40px;
    }
    .run {
      display: grid;
      grid-template: auto auto 1fr / minmax(0, 1fr) 336px;
      column-gap: 40px;
      align-items: start;
    }
    .title {
      grid-column: 1 / -1;
    }
    .side {
      grid-area: 2 / 2 / span 2 / auto;
      border-top: 1.5px solid var(--ink);
      padding-top: 12px;
    }
    tb-plots {
      grid-area: 3 / 1;
    }
  }
`;
