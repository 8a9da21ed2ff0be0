package org.axlecause.pages;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.math.BigDecimal;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.labels.CategoryItemLabelGenerator;
import org.jfree.chart.labels.ItemLabelAnchor;
import org.jfree.chart.labels.ItemLabelPosition;
import org.jfree.chart.labels.StandardCategoryItemLabelGenerator;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.category.DefaultCategoryDataset;

/** The forces of the two wheels of an axle beside each other, before and after the work, each bar with its words. */
final class WheelForceChart {

    private static final int WIDTH = 380;
    private static final int FRAME = 42;
    private static final int BAR = 26;
    private static final float FONT_SIZE = 12f;
    private static final double ROOM_FOR_LAST_NUMBER = 24;
    /** Room to the right of the longest bar, for its words. */
    private static final double ROOM_FOR_WORDS = 2.0;

    private static final Color OUTLINE = Color.BLACK;
    private static final List<Color> FILLS = List.of(new Color(0xD9D9D9), new Color(0x404040));

    private WheelForceChart() {}

    /**
     * A bar.
     *
     * @param wheel words of the wheel
     * @param when words of the test
     * @param newtons force
     */
    record Bar(String wheel, String when, BigDecimal newtons) {}

    static String of(List<Bar> bars, Lettering lettering, String id, String title, String description) {
        DefaultCategoryDataset data = new DefaultCategoryDataset();
        bars.forEach(bar -> data.addValue(bar.newtons(), bar.when(), bar.wheel()));
        Font font = SheetFonts.regular(FONT_SIZE);
        CategoryAxis wheels = new CategoryAxis();
        wheels.setTickLabelFont(font);
        wheels.setCategoryMargin(0.25);
        wheels.setTickLabelInsets(new RectangleInsets(2, 4, 2, 8));
        NumberAxis force = new NumberAxis("braking force in N");
        force.setLabelFont(font);
        force.setTickLabelFont(font);
        force.setNumberFormatOverride(whole());
        double highest = bars.stream()
                .mapToDouble(bar -> bar.newtons().doubleValue())
                .max()
                .orElse(1);
        force.setRange(0, Math.max(1, highest) * ROOM_FOR_WORDS);
        CategoryPlot plot = new CategoryPlot(data, wheels, force, renderer(data.getRowCount(), font));
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlineVisible(false);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        JFreeChart chart = new JFreeChart(null, font, plot, false);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(0, 0, 0, ROOM_FOR_LAST_NUMBER));
        int height = FRAME + BAR * data.getColumnCount() * data.getRowCount() + FRAME / 2;
        return Drawing.of(chart, lettering, id, WIDTH, height, title, description);
    }

    private static BarRenderer renderer(int rows, Font font) {
        BarRenderer renderer = new BarRenderer();
        renderer.setBarPainter(new StandardBarPainter());
        renderer.setShadowVisible(false);
        renderer.setDrawBarOutline(true);
        renderer.setItemMargin(0.08);
        CategoryItemLabelGenerator words = new StandardCategoryItemLabelGenerator("{2} N {0}", whole());
        ItemLabelPosition behind = new ItemLabelPosition(ItemLabelAnchor.OUTSIDE3, TextAnchor.CENTER_LEFT);
        for (int row = 0; row < rows; row++) {
            renderer.setSeriesPaint(row, FILLS.get(row % FILLS.size()));
            renderer.setSeriesOutlinePaint(row, OUTLINE);
            renderer.setSeriesOutlineStroke(row, new BasicStroke(1f));
            renderer.setSeriesItemLabelGenerator(row, words);
            renderer.setSeriesItemLabelsVisible(row, true);
            renderer.setSeriesItemLabelFont(row, font);
            renderer.setSeriesPositiveItemLabelPosition(row, behind);
        }
        return renderer;
    }

    private static NumberFormat whole() {
        NumberFormat format = NumberFormat.getIntegerInstance(Locale.ENGLISH);
        format.setGroupingUsed(false);
        return format;
    }
}
