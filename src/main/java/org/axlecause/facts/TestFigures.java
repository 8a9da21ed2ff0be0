package org.axlecause.facts;

import java.util.List;

/**
 * What one test shows, computed once from the test alone; regime figures are made of it later.
 *
 * @param test identity of the test's entry
 * @param figures figures by wheel and axle
 * @param shapes shapes of the loss that fit, by axle
 * @param doubts doubts about the test
 */
public record TestFigures(EntryId test, List<Figure> figures, List<ShapeOfLoss> shapes, List<TestDoubt> doubts) {

    public TestFigures {
        figures = List.copyOf(figures);
        shapes = List.copyOf(shapes);
        doubts = List.copyOf(doubts);
    }
}
