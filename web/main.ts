import './views/page.ts';
