package org.axlecause.pages;

import java.awt.Color;
import java.util.stream.Collectors;
import org.axlecause.statistics.Calibration;
import org.axlecause.statistics.ConfidenceLevel;
import org.axlecause.statistics.Interval;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** What came true beside what was told, bin by bin with its 95 % interval and number; on the dashed line both are alike. */
final class ReliabilityChart {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 450;
    private static final double GAP = 0.022;
    private static final double ROOM_FOR_LAST_NUMBER = 24;
    private static final RectangleInsets CLEAR_OF_THE_OTHER_AXIS = new RectangleInsets(10, 4, 2, 4);

    private ReliabilityChart() {}

    /** The chart as SVG. */
    static String of(Calibration calibration, Lettering lettering, String id, String title) {
        XYIntervalSeries told = new XYIntervalSeries("share that came true, with 95 % interval");
        for (Calibration.Bin bin : calibration.bins()) {
            Interval limits = bin.outcomes().wilson(ConfidenceLevel.OF_95_PERCENT);
            double x = bin.meanForecast();
            told.add(x, x, x, bin.outcomes().share(), limits.low(), limits.high());
        }
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        data.addSeries(told);
        XYPlot plot = new XYPlot(
                data,
                probabilities("probability told, n = %d".formatted(calibration.number())),
                shares("share that came true"),
                points());
        XYSeries diagonal = new XYSeries("as told");
        diagonal.add(0, 0);
        diagonal.add(1, 1);
        XYLineAndShapeRenderer line = new XYLineAndShapeRenderer(true, false);
        ChartStyle.line(line, 0, ChartStyle.DASHED);
        plot.setDataset(1, new XYSeriesCollection(diagonal));
        plot.setRenderer(1, line);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        ChartStyle.onWhite(plot);
        calibration.bins().forEach(bin -> plot.addAnnotation(number(bin)));
        JFreeChart chart = ChartStyle.chart(plot, true);
        chart.setPadding(new RectangleInsets(0, 0, 0, ROOM_FOR_LAST_NUMBER));
        return Drawing.of(chart, lettering, id, WIDTH, HEIGHT, title, described(calibration));
    }

    /** Its first number stands clear of that of the other axis. */
    private static NumberAxis probabilities(String words) {
        NumberAxis axis = shares(words);
        axis.setTickLabelInsets(CLEAR_OF_THE_OTHER_AXIS);
        return axis;
    }

    private static NumberAxis shares(String words) {
        NumberAxis axis = ChartStyle.axis(words, ChartStyle.percent());
        axis.setRange(0, 1);
        return axis;
    }

    private static XYErrorRenderer points() {
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawXError(false);
        renderer.setErrorPaint(Color.BLACK);
        renderer.setErrorStroke(ChartStyle.SOLID);
        ChartStyle.points(renderer, 0, ChartStyle.CIRCLE, Color.WHITE);
        return renderer;
    }

    /** On the side of the point where there is room. */
    private static XYTextAnnotation number(Calibration.Bin bin) {
        boolean left = bin.meanForecast() > 0.85;
        XYTextAnnotation number = new XYTextAnnotation(
                "n " + bin.outcomes().of(),
                bin.meanForecast() + (left ? -GAP : GAP),
                bin.outcomes().share());
        number.setFont(ChartStyle.font());
        number.setBackgroundPaint(Color.WHITE);
        number.setTextAnchor(left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT);
        return number;
    }

    private static String described(Calibration calibration) {
        return "%d forecasts, Brier score %s, expected calibration error %s. "
                        .formatted(
                                calibration.number(),
                                ChartStyle.plain().format(calibration.brier()),
                                ChartStyle.percent().format(calibration.expectedCalibrationError()))
                + calibration.bins().stream()
                        .map(bin -> "told %s, came true %s of %d"
                                .formatted(
                                        ChartStyle.percent().format(bin.meanForecast()),
                                        ChartStyle.percent()
                                                .format(bin.outcomes().share()),
                                        bin.outcomes().of()))
                        .collect(Collectors.joining("; "))
                + ".";
    }
}
