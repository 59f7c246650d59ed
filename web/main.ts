import { pointTile } from './section/earth.ts';
import { openingLook } from './state/look.ts';
import './views/page.ts';

openingLook();
// While the worker starts and computes.
setTimeout(pointTile);
