import { html } from 'lit';

/** What a page about water, electricity and stone owes whoever builds by it. */
export const cautions = html`<p>
    Local codes and licensed practice come first; a simulation is no survey. Make the stop test before the liner is trimmed.
  </p>
  <p>
    Water and electricity: ground-fault protection and a licensed electrician; switch the power off before reaching into
    the vault. Children drown in little water: fence and depth by code. Hoses and autofills need an air gap or a backflow
    device. Overflow never goes onto a neighbor or a foundation, and neither a check valve nor a float is flood protection.
  </p>`;
