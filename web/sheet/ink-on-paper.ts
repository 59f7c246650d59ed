import { css } from 'lit';

/** The tokens of the looks on a sheet of paper: black on white whatever the screen's look, tints as grays. */
export const inkOnPaper = css`
  article {
    --paper: #fff;
    --paper2: #fff;
    --ink: #000;
    --ink2: #222;
    --ink3: #777;
    --rule: #999;
    --stipple: #555;
    --stone: #fff;
    --shade: #000;
    --w1: #ececec;
    --w2: #dcdcdc;
    --w3: #a8a8a8;
    --w4: #6a6a6a;
    --w5: #5c5c5c;
    --w6: #505050;
    --water: #000;
    --edge: #000;
    --flow: #777;
    --wash: #eee;
    --foam: #fff;
    --gravel: #fff;
    --mat: #f4f4f4;
    --pore: #eee;
    --on-shallow: #000;
    --on-deep: #fff;
    --brick: #000;
  }
`;
