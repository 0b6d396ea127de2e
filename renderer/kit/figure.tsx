import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { asCsvFile, writeCsvRows } from '../../core/table/index.ts';
import { getHost } from '../host/index.ts';
import { chosenPairs, errorWords, fileStem, report, t } from '../state/index.ts';
import { toPng, toSvg } from './picture.ts';
import { type Size, useSize } from './use-size.ts';

export interface FigureProps {
  /** Heading over the drawing, and its name in files. */
  readonly title: string;
  /** What the drawing shows, for people who cannot see it. */
  readonly description?: string;
  /** Numbers behind the drawing, headings first; gives the figure a "Table" export. */
  readonly rows?: () => readonly (readonly (string | number)[])[];
  /** One line beside the title. */
  readonly note?: ComponentChildren;
  /** The live reading, at the drawing's upper right. */
  readonly reading?: ComponentChildren;
  /** Controls at the right of the title. */
  readonly tools?: ComponentChildren;
  /** Fixed drawing height in px; left out, the figure fills its parent's height. */
  readonly height?: number;
  readonly class?: string;
  /** Draws the content once the size is known. */
  readonly children: (size: Size) => ComponentChildren;
  /**
   * Drawn over the content on a layer of its own, and left out of saved pictures: what moves many times a second,
   * so that the browser need not paint the still part again each time.
   */
  readonly moving?: (size: Size) => ComponentChildren;
}

interface Exportable {
  picture(kind: 'svg' | 'png'): Promise<void>;
  table: (() => Promise<void>) | null;
}

/** Figures on screen, the last used one last: what the menu's export commands act on. */
const onScreen: { current: Exportable }[] = [];

/** The figure last used of those that can be exported so. */
const lastUsed = (what: 'picture' | 'table') =>
  onScreen.findLast(each => what === 'picture' || each.current.table !== null);

/** Whether a figure on screen can be exported so. */
export const canExport = (what: 'picture' | 'table'): boolean => lastUsed(what) !== undefined;

/** Exports the figure last used. */
export function exportFigure(what: 'picture' | 'table'): void {
  const figure = lastUsed(what)?.current;
  if (what === 'picture') void figure?.picture('png');
  else void figure?.table?.();
}

/** A titled drawing that fits its box and can be saved as SVG, PNG and (with `rows`) CSV. */
export function Figure(props: FigureProps): JSX.Element {
  const [box, size] = useSize<HTMLDivElement>();
  const svg = useRef<SVGSVGElement>(null);
  const fileName = fileStem(props.title);

  const heading = () => ({
    title: props.title,
    pairs: chosenPairs
      .peek()
      .map(({ mark, name }) => `${mark.letter} ${name}`)
      .join(', '),
  });
  const exportable: Exportable = {
    async picture(kind) {
      if (!svg.current) return;
      await saved(`${fileName}.${kind}`, async () =>
        kind === 'svg'
          ? getHost().exportFile(`${fileName}.svg`, 'image/svg+xml', toSvg(svg.current!, heading()))
          : getHost().exportFile(`${fileName}.png`, 'image/png', await toPng(svg.current!, heading())),
      );
    },
    table: props.rows
      ? () =>
          saved(`${fileName}.csv`, () =>
            getHost().exportFile(
              `${fileName}.csv`,
              'text/csv',
              asCsvFile(writeCsvRows(props.rows!().map(row => row.map(String)))),
            ),
          )
      : null,
  };
  const latest = useRef(exportable);
  latest.current = exportable;
  useEffect(() => {
    onScreen.push(latest);
    return () => void onScreen.splice(onScreen.indexOf(latest), 1);
  }, []);
  const bringForward = () => onScreen.push(...onScreen.splice(onScreen.indexOf(latest), 1));

  return (
    <figure
      class={`figure ${props.class ?? ''}`}
      onPointerDown={bringForward}
      onFocusCapture={bringForward}
      style={props.height ? undefined : { flex: '1 1 0', minHeight: 0 }}
    >
      <figcaption class="figure-head">
        <h2>{props.title}</h2>
        <p class="figure-note">{props.note}</p>
        <div class="figure-tools">
          {props.tools}
          <SaveMenu title={props.title} exportable={exportable} />
        </div>
      </figcaption>
      <div
        class="figure-box"
        ref={box}
        style={props.height ? { height: `${props.height}px` } : { flex: '1 1 0', minHeight: 0 }}
      >
        <div class="figure-reading">{props.reading}</div>
        {size.width > 0 && size.height > 0 && (
          // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
          <svg
            ref={svg}
            width={size.width}
            height={size.height}
            viewBox={`0 0 ${size.width} ${size.height}`}
            aria-label={props.description ?? props.title}
            role="group"
          >
            {props.children(size)}
          </svg>
        )}
        {props.moving && size.width > 0 && size.height > 0 && (
          <svg
            class="figure-moving"
            width={size.width}
            height={size.height}
            viewBox={`0 0 ${size.width} ${size.height}`}
            role="presentation"
          >
            {props.moving(size)}
          </svg>
        )}
      </div>
    </figure>
  );
}

/** Opens to the formats; closes when a choice is made or the focus leaves. */
function SaveMenu({ title, exportable }: { title: string; exportable: Exportable }): JSX.Element {
  const menu = useRef<HTMLDetailsElement>(null);
  const choose = (save: () => unknown) => () => {
    menu.current?.removeAttribute('open');
    void save();
  };
  return (
    <details
      ref={menu}
      class="export"
      onFocusOut={event => {
        if (!menu.current?.contains(event.relatedTarget as Node | null))
          menu.current?.removeAttribute('open');
      }}
      onKeyDown={event => {
        if (event.key !== 'Escape') return;
        menu.current?.removeAttribute('open');
        menu.current?.querySelector('summary')?.focus();
      }}
    >
      <summary aria-label={t('kit.saveFigure', { title })}>{t('common.save')}</summary>
      <div class="export-menu">
        <button type="button" onClick={choose(() => exportable.picture('png'))}>
          {t('kit.picture')}
        </button>
        <button type="button" onClick={choose(() => exportable.picture('svg'))}>
          {t('kit.drawing')}
        </button>
        {exportable.table && (
          <button type="button" onClick={choose(() => exportable.table?.())}>
            {t('kit.table')}
          </button>
        )}
      </div>
    </details>
  );
}

async function saved(name: string, write: () => Promise<boolean>): Promise<void> {
  try {
    if (await write()) report(t('common.saved', { name }));
  } catch (error) {
    report(t('common.notSaved', { name, why: errorWords(error) }), 'error');
  }
}
