import { openingLook } from './state/look.ts';
import './views/page.ts';

openingLook();
