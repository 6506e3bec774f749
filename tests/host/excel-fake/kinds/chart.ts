/** Charts and what they are made of. */
import { isIndex } from "../cells.ts";
import { AREA, type Area, bad, type FakeChart, type FakeSheet, type Kind } from "../types.ts";

export const CHART: Record<string, Kind> = {
  charts: {
    name: "ChartCollection",
    props: { count: { get: (s: FakeSheet) => s.charts.length } },
    methods: {
      add: {
        gives: "chart",
        writes: true,
        check: ([type, range, by]) =>
          type === "BarClustered" && range !== undefined && ["Auto", "Columns", "Rows"].includes(by),
        do(s: FakeSheet, _f, [type, range]) {
          const chart: FakeChart = { type, values: range[AREA](), legend: true, fromTop: false };
          s.charts.push(chart);
          return chart;
        },
      },
      getItemAt: {
        gives: "chart",
        check: ([i]) => isIndex(i),
        do: (s: FakeSheet, _f, [i]) => s.charts[i],
      },
    },
  },
  chart: {
    name: "Chart",
    navs: {
      title: { kind: "chartTitle", find: (c) => c },
      legend: { kind: "chartLegend", find: (c) => c },
      series: { kind: "seriesCollection", find: (c) => c },
      axes: { kind: "chartAxes", find: (c) => c },
    },
    methods: {
      delete: {
        do(c: FakeChart, f) {
          for (const sheet of f.sheets) sheet.charts = sheet.charts.filter((one) => one !== c);
        },
      },
      setPosition: {
        check: ([start]) => start !== undefined,
        do(c: FakeChart, _f, [start, end]) {
          const [a, b]: Area[] = [start[AREA](), end[AREA]()];
          if (b!.row < a!.row || b!.column < a!.column) throw bad("a chart ends before it begins");
          c.at = { ...a!, rows: b!.row - a!.row + 1, columns: b!.column - a!.column + 1 };
        },
      },
    },
  },
  chartTitle: {
    name: "ChartTitle",
    props: {
      text: {
        set(c: FakeChart, value) {
          c.title = value;
        },
      },
    },
  },
  chartLegend: {
    name: "ChartLegend",
    props: {
      visible: {
        set(c: FakeChart, value) {
          c.legend = value;
        },
      },
    },
  },
  chartAxes: { name: "ChartAxes", navs: { categoryAxis: { kind: "chartAxis", find: (c) => c } } },
  chartAxis: {
    name: "ChartAxis",
    props: {
      reversePlotOrder: {
        since: "1.7",
        set(c: FakeChart, value) {
          c.fromTop = value;
        },
      },
    },
  },
  seriesCollection: {
    name: "ChartSeriesCollection",
    methods: { getItemAt: { gives: "series", check: ([i]) => i === 0, do: (c) => c } },
  },
  series: {
    name: "ChartSeries",
    methods: {
      setXAxisValues: {
        since: "1.7",
        do(c: FakeChart, _f, [range]) {
          c.names = range[AREA]();
        },
      },
    },
  },
};
