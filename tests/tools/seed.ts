/** Every run of the tests draws the same random cases; SEED=… draws others. A failing case prints its seed and path. */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 20_310_601) });
