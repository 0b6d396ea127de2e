import { describe, expect, it } from 'vitest';
import { Playback } from '../../../renderer/scene/playback.ts';

function ready(seconds: number): Playback {
  const playback = new Playback();
  playback.setDuration(seconds);
  return playback;
}

describe('playback', () => {
  it('plays on from where it was put, and from the start once the end is reached', () => {
    const playback = ready(4);
    playback.seek(3);
    playback.play();
    expect(playback.time).toBe(3);
    expect(playback.advance(5)).toBe(false);
    expect(playback.time).toBe(4);
    playback.play();
    expect(playback.time).toBe(0);
  });

  it('shows a cued moment, but plays from the start', () => {
    const playback = ready(4);
    playback.cue(3);
    expect(playback.time).toBe(3);
    playback.play();
    expect(playback.time).toBe(0);
  });

  it('plays on from a moment chosen after one was cued', () => {
    const playback = ready(4);
    playback.cue(3);
    playback.seek(2);
    playback.play();
    expect(playback.time).toBe(2);
    playback.pause();
    playback.play();
    expect(playback.time).toBe(2);
  });

  it('moves at its rate, within its duration', () => {
    const playback = ready(4);
    playback.rate = 0.25;
    playback.play();
    expect(playback.advance(2)).toBe(true);
    expect(playback.time).toBe(0.5);
    playback.seek(9);
    expect(playback.time).toBe(4);
    playback.seek(-1);
    expect(playback.time).toBe(0);
  });
});
