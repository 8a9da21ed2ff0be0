package org.axlecause.pages;

import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jspecify.annotations.Nullable;

/** The forces of two wheels over time; the lines differ by their dashes, not by their colour. */
final class TraceChart {

    private static final int WIDTH = 420;
    private static final int HEIGHT = 240;
    private static final double MILLISECONDS = 1000;

    private TraceChart() {}

    /**
     * A line.
     *
     * @param name words of the wheel
     * @param samples forces, null where there is a gap
     */
    record Line(String name, List<@Nullable Double> samples) {}

    static String of(
            List<Line> lines,
            double periodInMilliseconds,
            String unit,
            Lettering lettering,
            String id,
            String title,
            String description) {
        XYSeriesCollection data = new XYSeriesCollection();
        for (Line line : lines) {
            XYSeries series = new XYSeries(line.name());
            for (int index = 0; index < line.samples().size(); index++) {
                series.add(
                        index * periodInMilliseconds / MILLISECONDS,
                        line.samples().get(index));
            }
            data.addSeries(series);
        }
        XYPlot plot = new XYPlot(
                data,
                ChartStyle.axis("time in s"),
                ChartStyle.axis("braking force in " + unit),
                renderer(lines.size()));
        ChartStyle.onWhite(plot);
        JFreeChart chart = ChartStyle.chart(plot, true);
        return Drawing.of(chart, lettering, id, WIDTH, HEIGHT, title, description);
    }

    private static XYLineAndShapeRenderer renderer(int lines) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        for (int row = 0; row < lines; row++) {
            ChartStyle.line(renderer, row, ChartStyle.STROKES.get(row % ChartStyle.STROKES.size()));
        }
        renderer.setDrawSeriesLineAsPath(true);
        return renderer;
    }
}
