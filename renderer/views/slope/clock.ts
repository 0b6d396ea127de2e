import { computed, signal } from '@preact/signals';

/** What can be played: the scene, or the clock of the flat plan. */
export interface Player {
  play(): void;
  pause(): void;
  seek(seconds: number): void;
  setRate(rate: number): void;
}

/** The one time everything on the stage shows, s; traces, scrubber and scene share it. */
export const clock = signal(0);
export const playing = signal(false);
export const rate = signal(1);

/** The clock in steps a person can read; sheets that are dear to draw follow this one. */
export const calmClock = computed(() => (playing.value ? Math.round(clock.value * 4) / 4 : clock.value));

let player: Player | null = null;

/** Told by the player of every change. */
export function tick(seconds: number, isPlaying: boolean): void {
  clock.value = seconds;
  playing.value = isPlaying;
}

export function usePlayer(next: Player | null): void {
  player = next;
  next?.setRate(rate.peek());
  if (!next) playing.value = false;
}

const play = (): void => player?.play();
export const pause = (): void => player?.pause();
export const seek = (seconds: number): void => player?.seek(seconds);
export const togglePlay = (): void => (playing.peek() ? pause() : play());

export function setRate(next: number): void {
  rate.value = next;
  player?.setRate(next);
}

/** A player without a scene; its loop runs only while playing. */
export function flatPlayer(duration: () => number): Player & { stop(): void } {
  let request = 0;
  let last = 0;
  let speed = 1;
  const step = (now: number) => {
    const seconds = last === 0 ? 0 : Math.min(0.1, (now - last) / 1000);
    last = now;
    const next = Math.min(duration(), clock.peek() + seconds * speed);
    const goesOn = next < duration();
    request = goesOn ? requestAnimationFrame(step) : 0;
    tick(next, goesOn);
  };
  const halt = () => {
    cancelAnimationFrame(request);
    request = 0;
    last = 0;
  };
  return {
    play() {
      if (request !== 0) return;
      last = 0;
      if (clock.peek() >= duration()) clock.value = 0;
      request = requestAnimationFrame(step);
      playing.value = true;
    },
    pause() {
      halt();
      playing.value = false;
    },
    seek(seconds) {
      tick(Math.min(duration(), Math.max(0, seconds)), request !== 0);
    },
    setRate(next) {
      speed = next;
    },
    stop: halt,
  };
}
