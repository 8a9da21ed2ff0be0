package org.axlecause.pages;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.statistics.Funnel;
import org.axlecause.statistics.FunnelLimits;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Units by their size between the limits of chance; those beyond are named. */
final class FunnelChart {

    private static final int WIDTH = 500;
    private static final int HEIGHT = 420;
    private static final int STEPS = 80;
    private static final double GAP = 0.02;
    private static final double LAST_WITH_ROOM = 0.6;

    private FunnelChart() {}

    /**
     * The chart as SVG.
     *
     * @param unit what the points are, such as sites
     * @param value what is compared, the words of the upright axis
     * @param size what the size is, the words of the other axis
     */
    static String of(
            Funnel funnel, String unit, String value, String size, Lettering lettering, String id, String title) {
        XYPlot plot = new XYPlot(
                points(funnel),
                ChartStyle.axis("%s; n = %d %s".formatted(size, funnel.points().size(), unit)),
                ChartStyle.axis(value, funnel.kind() == Funnel.Kind.SHARE ? ChartStyle.percent() : ChartStyle.plain()),
                pointRenderer());
        plot.setDataset(1, limits(funnel));
        plot.setRenderer(1, limitRenderer());
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        ChartStyle.onWhite(plot);
        for (Funnel.Point point : funnel.points()) {
            if (point.verdict() != Funnel.Verdict.WITHIN) {
                plot.addAnnotation(name(point, largest(funnel)));
            }
        }
        return Drawing.of(
                ChartStyle.chart(plot, true), lettering, id, WIDTH, HEIGHT, title, described(funnel, unit, value));
    }

    /** On the side of the point where there is room. */
    private static XYTextAnnotation name(Funnel.Point point, double largest) {
        boolean left = point.size() > largest * LAST_WITH_ROOM;
        XYTextAnnotation name =
                new XYTextAnnotation(point.name(), point.size() + (left ? -largest : largest) * GAP, point.value());
        name.setFont(ChartStyle.font());
        name.setTextAnchor(left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT);
        name.setBackgroundPaint(Color.WHITE);
        return name;
    }

    private static XYSeriesCollection points(Funnel funnel) {
        XYSeries within = new XYSeries("within the limits", false);
        XYSeries beyond = new XYSeries("beyond 95 %", false);
        XYSeries farBeyond = new XYSeries("beyond 99.8 %", false);
        for (Funnel.Point point : funnel.points()) {
            XYSeries series =
                    switch (point.verdict()) {
                        case WITHIN -> within;
                        case ABOVE_95_PERCENT, BELOW_95_PERCENT -> beyond;
                        case ABOVE_99_8_PERCENT, BELOW_99_8_PERCENT -> farBeyond;
                    };
            series.add(point.size(), point.value());
        }
        return collection(within, beyond, farBeyond);
    }

    private static XYSeriesCollection limits(Funnel funnel) {
        double largest = largest(funnel);
        XYSeries target = new XYSeries("as expected");
        target.add(0, funnel.target());
        target.add(largest * (1 + 1.0 / STEPS), funnel.target());
        XYSeries upper = new XYSeries("95 % limits");
        XYSeries lower = new XYSeries("lower 95 %");
        XYSeries farUpper = new XYSeries("99.8 % limits");
        XYSeries farLower = new XYSeries("lower 99.8 %");
        double smallest =
                funnel.points().stream().mapToDouble(Funnel.Point::size).min().orElse(1);
        double growth = Math.pow(largest * (1 + 1.0 / STEPS) / smallest, 1.0 / STEPS);
        for (int step = 0; step <= STEPS; step++) {
            double size = smallest * Math.pow(growth, step);
            FunnelLimits limits = funnel.limitsAt(size);
            upper.add(size, limits.inner().high());
            lower.add(size, limits.inner().low());
            farUpper.add(size, limits.outer().high());
            farLower.add(size, limits.outer().low());
        }
        return collection(target, upper, lower, farUpper, farLower);
    }

    private static double largest(Funnel funnel) {
        return funnel.points().stream().mapToDouble(Funnel.Point::size).max().orElse(1);
    }

    private static XYSeriesCollection collection(XYSeries... series) {
        XYSeriesCollection data = new XYSeriesCollection();
        List.of(series).forEach(data::addSeries);
        return data;
    }

    private static XYLineAndShapeRenderer pointRenderer() {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
        ChartStyle.points(renderer, 0, ChartStyle.CIRCLE, Color.WHITE);
        ChartStyle.points(renderer, 1, ChartStyle.SQUARE, ChartStyle.MIDDLE);
        ChartStyle.points(renderer, 2, ChartStyle.DIAMOND, Color.BLACK);
        return renderer;
    }

    private static XYLineAndShapeRenderer limitRenderer() {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
        List<BasicStroke> strokes =
                List.of(ChartStyle.SOLID, ChartStyle.DASHED, ChartStyle.DASHED, ChartStyle.DOTTED, ChartStyle.DOTTED);
        for (int series = 0; series < strokes.size(); series++) {
            ChartStyle.line(renderer, series, strokes.get(series));
        }
        renderer.setSeriesVisibleInLegend(2, false);
        renderer.setSeriesVisibleInLegend(4, false);
        renderer.setDrawSeriesLineAsPath(true);
        return renderer;
    }

    private static String described(Funnel funnel, String unit, String value) {
        String first = "%s of %d %s, overdispersion %s. "
                .formatted(
                        value, funnel.points().size(), unit, ChartStyle.plain().format(funnel.overdispersion()));
        List<Funnel.Point> beyond = funnel.points().stream()
                .filter(point -> point.verdict() != Funnel.Verdict.WITHIN)
                .toList();
        if (beyond.isEmpty()) {
            return first + "All lie within the 95 % limits.";
        }
        return first
                + beyond.stream().map(FunnelChart::told).collect(Collectors.joining("; "))
                + ". All others lie within the 95 % limits.";
    }

    private static String told(Funnel.Point point) {
        String where =
                switch (point.verdict()) {
                    case BELOW_99_8_PERCENT -> "below the 99.8 % limit";
                    case BELOW_95_PERCENT -> "below the 95 % limit";
                    case WITHIN -> "within the limits";
                    case ABOVE_95_PERCENT -> "above the 95 % limit";
                    case ABOVE_99_8_PERCENT -> "above the 99.8 % limit";
                };
        return "%s: %d at a size of %s, %s"
                .formatted(point.name(), point.observed(), ChartStyle.plain().format(point.size()), where);
    }
}
