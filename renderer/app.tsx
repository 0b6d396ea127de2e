import './theme/index.ts';
import { render } from 'preact';
import { Frame, startApp } from './frame/index.ts';
import { getHost } from './host/index.ts';
import { followTheme } from './theme/index.ts';

followTheme();
startApp(getHost()).then(() => {
  render(<Frame />, document.getElementById('app')!);
});
