/**
 * The kit: what every view is drawn with. All values are passed in the unit their `measure` holds (see
 * core/units/measures.ts: `radius` in m, `angle` in rad, `angleDeg` in degrees, `widthMm` in mm, …);
 * the kit converts for display, metric or imperial, and rounds to what an uncertainty supports.
 *
 *   <Chart title x={{ label, measure }} y={{ label, measure, zero?, domain?, ceiling? }} series={[…]}
 *     cursor?={signal} height?={px} tools?>{plot => overlays}</Chart>
 *       series: { id, label, mark?, x: ArrayLike, y: ArrayLike, low?, high?, context?, filled? }
 *       `mark` is a chosen pair's mark; `context: true` is a soft dotted line (a rule, a limit).
 *       Without `height` the chart fills its (flex column) parent. Exports SVG, PNG and CSV by itself.
 *       Share one `cursor` signal (held x units) to move several charts together.
 *       The live reading stands at the plot's upper right, the y title at its upper left; keep y labels short.
 *   <Figure title note? rows?>{({ width, height }) => svg content}</Figure>   any other drawing, with the exports.
 *       Mark controls inside it with `data-control`: they are left out of pictures. In drawings `class="line"`
 *       is a pair's line, `class="halo"` keeps text legible over lines, `<PairBadge mark svg />` is its letter.
 *   <Handle label measure value min max step along="x|y" x y invert={px => value} text? onInput />
 *       a grip inside a Chart or Figure; x, y in px of the group it is drawn in.
 *   <Quantity label measure value min max step? log? note? onInput />   slider and field with units.
 *   <Reading label measure value uncertainty? working?={() => Working} why? note? />   one large figure.
 *   <PairReadings label measure activeId rows={[{ id, mark, of: name, value, … }]} />  pair by pair.
 *   <NumberCell label value min max unit onInput onClear? onProblem />   a number in a table, `onClear` where none may be given.
 *   <Segments label value options onInput />, <Toolbar label>, <Dialog title place onClose>, <PairBadge mark />,
 *   <Tex tex />, showWorking(title, working), <Empty>what to do next</Empty>
 *
 * Undo: pass a key with the edit in onInput (`changeConditions(label, change, key)`); the kit calls `settle`
 * when a drag or a key run ends.
 * Heavy work: `answer` in renderer/answers.
 * Stage layout: `<div class="stage-column">` stacks figures and shares the height; `<div class="stage-split">`
 * puts two side by side. Readings go in a fragment; the frame scrolls them.
 */
import './kit.css';
import './figure.css';

export { Chart, type ChartProps, type Plot } from './chart.tsx';
export { axisTitle, tickRoom, ticksAcross, ticksUp } from './chart-axes.tsx';
export { Dialog, type DialogProps } from './dialog.tsx';
export { Empty } from './empty.tsx';
export { canExport, exportFigure, Figure, type FigureProps } from './figure.tsx';
export { Handle, type HandleProps } from './handle.tsx';

export { NumberCell } from './number-cell.tsx';
export { PairBadge } from './pair-badge.tsx';
export { type SnowMark, styleOf } from './pair-style.ts';
export { Quantity, type QuantityProps } from './quantity.tsx';
export { type PairReadingRow, PairReadings, Reading, type ReadingProps } from './reading.tsx';
export { Segments, Toolbar, worded } from './segments.tsx';
export { type Axis, extentOf, type Series, valueAt } from './series.ts';
export { spread } from './spread.ts';
export { type PictureState, usePicture } from './use-picture.ts';
export type { Size } from './use-size.ts';
export { showWorking, WorkingPanel } from './working-panel.tsx';
