import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { besideClear, clearBox } from '../../../renderer/scene/keep-clear.ts';

const camera = new PerspectiveCamera(40, 2, 0.1, 100);
camera.position.set(0, 0, 10);
camera.updateMatrixWorld();

const box = (points: Vector3[]) => {
  const out = { left: 0, right: 0, top: 0, bottom: 0 };
  clearBox(points, camera, 800, 400, 20, out);
  return out;
};

describe('what labels keep clear of', () => {
  it('is the part of the picture the points take up, and the room of a plate around it', () => {
    const clear = box([new Vector3(-1, 0, 0), new Vector3(1, 1, 0)]);
    const metre = 200 / (10 * Math.tan((20 * Math.PI) / 180));
    expect(clear.left).toBeCloseTo(400 - metre - 10, 6);
    expect(clear.right).toBeCloseTo(400 + metre + 10, 6);
    expect(clear.top).toBeCloseTo(200 - metre - 20, 6);
    expect(clear.bottom).toBeCloseTo(220, 6);
  });

  it('is empty without points, and nothing moves', () => {
    expect(besideClear(400, 200, 60, 400, box([]), 800)).toBe(0);
    expect(besideClear(400, 200, 60, 400, box([new Vector3(0, 0, 20)]), 800)).toBe(0);
  });

  const clear = { left: 380, right: 420, top: 100, bottom: 300 };

  it('sends a plate to the side on which its anchor lies', () => {
    expect(400 + besideClear(400, 200, 60, 390, clear, 800) + 60).toBe(380);
    expect(400 + besideClear(400, 200, 60, 410, clear, 800) - 60).toBe(420);
  });

  it('sends it to the other side where that one has no room, and leaves it where neither has', () => {
    expect(besideClear(400, 200, 200, 390, clear, 1000)).toBe(220);
    expect(besideClear(400, 200, 60, 410, clear, 500)).toBe(-80);
    expect(besideClear(400, 200, 200, 410, clear, 800)).toBe(0);
  });

  it('leaves a plate that covers nothing', () => {
    expect(besideClear(400, 99, 60, 400, clear, 800)).toBe(0);
    expect(besideClear(490, 200, 60, 490, clear, 800)).toBe(0);
  });
});
