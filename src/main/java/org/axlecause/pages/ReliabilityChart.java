package org.axlecause.pages;

import java.awt.Color;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.statistics.Calibration;
import org.axlecause.statistics.ConfidenceLevel;
import org.axlecause.statistics.Interval;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
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
    private static final int HEIGHT = 490;
    /** Above the highest share the numbers stand in two rows by turns, so that those of neighbours stay apart. */
    private static final double TOP_OF_NUMBERS = 1.095;

    private static final List<Double> ROWS_OF_NUMBERS = List.of(1.025, 1.07);
    private static final double HALF_A_NUMBER = 0.06;
    private static final double TICKS = 0.1;
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
                sharesBelowNumbers("share that came true"),
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
        for (int index = 0; index < calibration.bins().size(); index++) {
            double row = ROWS_OF_NUMBERS.get(index % ROWS_OF_NUMBERS.size());
            plot.addAnnotation(number(calibration.bins().get(index), row));
        }
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

    private static NumberAxis sharesBelowNumbers(String words) {
        NumberAxis axis = shares(words);
        axis.setRange(0, TOP_OF_NUMBERS);
        axis.setTickUnit(new NumberTickUnit(TICKS));
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

    /** Above its point, as far as the edges leave room. */
    private static XYTextAnnotation number(Calibration.Bin bin, double row) {
        XYTextAnnotation number = new XYTextAnnotation(
                "n " + bin.outcomes().of(),
                Math.max(HALF_A_NUMBER, Math.min(1 - HALF_A_NUMBER, bin.meanForecast())),
                row);
        number.setFont(ChartStyle.font());
        number.setTextAnchor(TextAnchor.CENTER);
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
