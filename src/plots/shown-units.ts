/** A plot in the units that the reader has chosen: the same marks on axes of another unit. */
import { shownUnit, shownValue } from "#machine/units";
import { unitsNow } from "#view/units";
import type { Axis, Handle, PlotState, Zone } from "./state.ts";

type Convert = (value: number) => number;
interface Both {
  readonly x: Convert;
  readonly y: Convert;
}

const list = (values: ArrayLike<number | null>, to: Convert): (number | null)[] =>
  Array.from(values, (value) => (value === null ? null : to(value)));

type Ends = readonly [number | null, number | null];
const span = ([low, high]: Ends, to: Convert): Ends => [low === null ? null : to(low), high === null ? null : to(high)];

const shown = ({ unit, sameForAll }: Axis): string => (sameForAll ? unit : shownUnit(unit, unitsNow()));

const convertOf = (axis: Axis): Convert =>
  shown(axis) === axis.unit ? (value) => value : (value) => shownValue(value, axis.unit, unitsNow());

function axisIn(axis: Axis, to: Convert): Axis {
  if (shown(axis) === axis.unit) return axis;
  // Ticks at round values of the old unit are round no longer: the axis finds its own.
  const { low, high, ticks: _, tickTexts: __, ...rest } = axis;
  return {
    ...rest,
    unit: shown(axis),
    ...(low === undefined ? {} : { low: to(low) }),
    ...(high === undefined ? {} : { high: to(high) }),
  };
}

function zoneIn(zone: Zone, to: Both): Zone {
  const { between } = zone;
  return {
    ...zone,
    ...(zone.x ? { x: span(zone.x, to.x) } : {}),
    ...(zone.y ? { y: span(zone.y, to.y) } : {}),
    ...(between
      ? {
          between: {
            xs: list(between.xs, to.x) as number[],
            lower: list(between.lower, to.y),
            upper: list(between.upper, to.y),
          },
        }
      : {}),
  };
}

/** The mark where it stands on the new axes; its field keeps its own unit, so scale and offset take up the conversion. */
function handleIn(handle: Handle, to: Both): Handle {
  const along = to[handle.moves];
  const origin = along(0);
  const scale = (handle.scale ?? 1) / (along(1) - origin);
  return {
    ...handle,
    x: handle.x === null ? null : to.x(handle.x),
    y: handle.y === null ? null : to.y(handle.y),
    scale,
    offset: (handle.offset ?? 0) - origin * scale,
  };
}

/** The plot as it is, or with every value on an axis of another unit converted. Units: of its axes. By definition of the units. */
export function inShownUnits(state: PlotState): PlotState {
  const { x, y, levels = [], zones = [], points = [], handles = [] } = state;
  if (shown(x) === x.unit && shown(y) === y.unit) return state;
  const to: Both = { x: convertOf(x), y: convertOf(y) };
  return {
    ...state,
    unit: state.unit === y.unit ? shown(y) : state.unit,
    x: axisIn(x, to.x),
    y: axisIn(y, to.y),
    curves: state.curves.map((curve) => ({
      ...curve,
      xs: list(curve.xs, to.x) as number[],
      ys: list(curve.ys, to.y),
    })),
    levels: levels.map((level) => ({ ...level, at: to[level.axis](level.at) })),
    zones: zones.map((zone) => zoneIn(zone, to)),
    points: points.map((point) => ({
      ...point,
      x: to.x(point.x),
      y: to.y(point.y),
      ...(point.low === undefined ? {} : { low: to.y(point.low) }),
      ...(point.high === undefined ? {} : { high: to.y(point.high) }),
    })),
    handles: handles.map((handle) => handleIn(handle, to)),
  };
}
