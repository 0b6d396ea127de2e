/** A clock that a scene plays, slows and scrubs; it only moves when told how much time has passed. */
export class Playback {
  /** Called after every change of the time shown, s. */
  onTime: ((seconds: number, playing: boolean) => void) | null = null;
  #time = 0;
  #duration = 0;
  #playing = false;
  #cued = false;
  rate = 1;

  get time(): number {
    return this.#time;
  }

  get duration(): number {
    return this.#duration;
  }

  get playing(): boolean {
    return this.#playing;
  }

  setDuration(seconds: number): void {
    this.#duration = Math.max(0, seconds);
    if (this.#time > this.#duration) this.#time = this.#duration;
  }

  /** Shows a moment without going there: playing still begins at the start. */
  cue(seconds: number): void {
    this.seek(seconds);
    this.#cued = true;
  }

  /** Plays on; from the start when the end was reached, or when the time shown was only cued. */
  play(): void {
    if (this.#duration === 0) return;
    if (this.#cued || this.#time >= this.#duration) this.#time = 0;
    this.#cued = false;
    this.#playing = true;
    this.onTime?.(this.#time, true);
  }

  pause(): void {
    this.#playing = false;
    this.onTime?.(this.#time, false);
  }

  seek(seconds: number): void {
    this.#cued = false;
    this.#time = Math.min(this.#duration, Math.max(0, seconds));
    this.onTime?.(this.#time, this.#playing);
  }

  /** @returns true while it goes on moving */
  advance(seconds: number): boolean {
    if (!this.#playing) return false;
    this.#time = Math.min(this.#duration, this.#time + seconds * this.rate);
    if (this.#time >= this.#duration) this.#playing = false;
    this.onTime?.(this.#time, this.#playing);
    return this.#playing;
  }
}
