package org.axlecause.pages;

import java.awt.Color;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.axlecause.statistics.ControlChart;
import org.axlecause.statistics.Proportion;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Shares month by month with the limits of their control chart; a month beyond a limit is a black diamond. */
final class MonthlyChart {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 400;
    /** Most months that are named along the axis. */
    private static final int NAMED = 24;

    private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);

    private static final int OUT = 0;
    private static final int SHARE = 1;
    private static final int MEAN = 2;
    private static final int LIMIT = 3;
    private static final int OTHER_LIMIT = 4;

    private MonthlyChart() {}

    /**
     * A month.
     *
     * @param month of the site
     * @param counts those counted among the cases of the month
     */
    record Month(YearMonth month, Proportion counts) {}

    /**
     * The chart as SVG.
     *
     * @param months in their order, with those that nothing is told of
     * @param counted what is counted, such as cases with a cause
     */
    static String of(List<Month> months, String counted, Lettering lettering, String id, String title) {
        ControlChart limits =
                ControlChart.ofShares(months.stream().map(Month::counts).toList());
        XYPlot plot = new XYPlot(data(limits), months(months), shares(months, counted), renderer(limits));
        ChartStyle.onWhite(plot);
        return Drawing.of(
                ChartStyle.chart(plot, true), lettering, id, WIDTH, HEIGHT, title, described(months, limits, counted));
    }

    private static XYSeriesCollection data(ControlChart limits) {
        XYSeries share = new XYSeries("share of the month");
        XYSeries out = new XYSeries("beyond a limit");
        XYSeries mean = new XYSeries("mean");
        XYSeries high = new XYSeries("limits, three standard errors");
        XYSeries low = new XYSeries("lower limit");
        for (int index = 0; index < limits.points().size(); index++) {
            ControlChart.Point point = limits.points().get(index);
            boolean known = point.value() != null;
            share.add(index, point.value());
            if (point.out()) {
                out.add(index, point.value());
            }
            mean.add(index, limits.centre());
            high.add(index, known ? point.limits().high() : null);
            low.add(index, known ? point.limits().low() : null);
        }
        XYSeriesCollection data = new XYSeriesCollection();
        List.of(out, share, mean, high, low).forEach(data::addSeries);
        return data;
    }

    private static SymbolAxis months(List<Month> months) {
        SymbolAxis axis = new SymbolAxis(
                null,
                months.stream()
                        .map(month -> month.counts().of() == 0
                                ? NAME.format(month.month()) + ", not told"
                                : "%s, n %d"
                                        .formatted(
                                                NAME.format(month.month()),
                                                month.counts().of()))
                        .toArray(String[]::new));
        axis.setTickLabelFont(ChartStyle.font());
        axis.setVerticalTickLabels(true);
        axis.setGridBandsVisible(false);
        axis.setTickUnit(new NumberTickUnit(Math.ceil((double) months.size() / NAMED)));
        return axis;
    }

    private static NumberAxis shares(List<Month> months, String counted) {
        long all = months.stream().mapToLong(month -> month.counts().of()).sum();
        return ChartStyle.axis("%s, of n = %d".formatted(counted, all), ChartStyle.percent());
    }

    private static XYLineAndShapeRenderer renderer(ControlChart limits) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
        ChartStyle.points(renderer, SHARE, ChartStyle.CIRCLE, Color.WHITE);
        renderer.setSeriesStroke(SHARE, ChartStyle.SOLID);
        renderer.setSeriesLinesVisible(SHARE, true);
        ChartStyle.points(renderer, OUT, ChartStyle.DIAMOND, Color.BLACK);
        renderer.setSeriesVisibleInLegend(OUT, !limits.out().isEmpty());
        ChartStyle.line(renderer, MEAN, ChartStyle.DASHED);
        ChartStyle.line(renderer, LIMIT, ChartStyle.DOTTED);
        ChartStyle.line(renderer, OTHER_LIMIT, ChartStyle.DOTTED);
        renderer.setSeriesVisibleInLegend(OTHER_LIMIT, false);
        return renderer;
    }

    private static String described(List<Month> months, ControlChart limits, String counted) {
        String first = "%s in %d months, mean %s. "
                .formatted(counted, months.size(), ChartStyle.percent().format(limits.centre()));
        if (limits.out().isEmpty()) {
            return first + "No month lies beyond its limits.";
        }
        return first
                + limits.out().stream()
                        .map(index -> "%s: %d of %d, beyond a limit"
                                .formatted(
                                        NAME.format(months.get(index).month()),
                                        months.get(index).counts().count(),
                                        months.get(index).counts().of()))
                        .collect(Collectors.joining("; "))
                + ".";
    }
}
