/** Where steps prove too long for the equations' curvature, moving itself is made dear, and cheap again after. */
const LEAST = 1e-4;
const MOST = 1e4;
const UP = 6;
const DOWN = 4;
/** A step is too long when the line search cut it to under this share, or the violation rose as much after it. */
const SHORT_SHARE = 0.3;
const VIOLATION_GROWTH = 10;
const NEGLIGIBLE_VIOLATION = 0.1;
/** Full steps in a row that only points left behind forbid, before steps are damped, and by how much at first. */
const MOST_BLOCKED = 4;
const BLOCKED = 1e-3;
const BLOCKED_UP = 10;
/** What was needed against blocking fades slowly. */
const BLOCKED_FADE = 0.9;

/** How dear movement is made, from how the last steps went: a Levenberg–Marquardt weight on every change. */
export class StepDamping {
  #now = 0;
  #floor = 0;
  #blocked = 0;

  begin(): void {
    this.#now = 0;
    this.#floor = 0;
    this.#blocked = 0;
  }

  get now(): number {
    return this.#now;
  }

  /** A full step was refused; `onlyByFilter` when it is better than the point it started from. */
  noteRefusal(onlyByFilter: boolean): void {
    this.#blocked = onlyByFilter ? this.#blocked + 1 : 0;
    if (this.#blocked <= MOST_BLOCKED) return;
    this.#blocked = 0;
    this.#floor = Math.max(BLOCKED, BLOCKED_UP * this.#floor);
    this.#now = Math.max(this.#now, this.#floor);
  }

  /** A step was taken to this share of what the bounds allowed. */
  noteStep(share: number, violationBefore: number, violation: number): void {
    const strained =
      share < SHORT_SHARE || violation > Math.max(VIOLATION_GROWTH * violationBefore, NEGLIGIBLE_VIOLATION);
    if (strained) this.#now = Math.min(MOST, Math.max(LEAST, UP * this.#now));
    else this.#now = this.#now < LEAST ? 0 : this.#now / DOWN;
    this.#floor = this.#floor < LEAST ? 0 : BLOCKED_FADE * this.#floor;
    this.#now = Math.max(this.#now, this.#floor);
  }
}
