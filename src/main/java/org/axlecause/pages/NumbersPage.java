package org.axlecause.pages;

import io.quarkus.qute.RawString;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A question about numbers as a form, with its answer.
 *
 * @param question what is asked
 * @param others all questions
 * @param parts parts of the form
 * @param asked whether the form was filled in
 * @param problems what is wrong with what was asked; empty where nothing is
 * @param answer what is told; null where nothing is asked yet or something is wrong
 */
public record NumbersPage(
        NumbersQuestion question,
        List<NumbersQuestion> others,
        List<Part> parts,
        boolean asked,
        List<String> problems,
        @Nullable Answer answer) {

    /**
     * A part of the form.
     *
     * @param title what it is about
     * @param fields its fields
     */
    public record Part(String title, List<Field> fields) {}

    /**
     * A field, which stands for one value of a parameter.
     *
     * @param id unique on the page
     * @param name of the parameter
     * @param label its words
     * @param kind choice, suggestion or day
     * @param none words for no value
     * @param options values that can be chosen
     * @param value what was chosen; empty for nothing
     */
    public record Field(
            String id, String name, String label, String kind, String none, List<Option> options, String value) {}

    /**
     * A value that can be chosen.
     *
     * @param value its code
     * @param words its words
     */
    public record Option(String value, String words) {}

    /**
     * What is told.
     *
     * @param among the cases that are asked about, in words
     * @param asOf moment of the answer
     * @param statements what holds for all of it
     * @param empty whether no case stands behind it
     * @param pictures charts
     * @param tables tables
     * @param more address of the rows that follow; null for none
     * @param downloads where it can be taken away
     * @param definitions what the words mean
     */
    public record Answer(
            String among,
            String asOf,
            List<String> statements,
            boolean empty,
            List<Picture> pictures,
            List<Table> tables,
            @Nullable String more,
            List<Download> downloads,
            List<Definition> definitions) {}

    /**
     * A chart.
     *
     * @param title what it shows
     * @param svg the chart
     */
    public record Picture(String title, RawString svg) {}

    /**
     * A table.
     *
     * @param caption what it holds
     * @param columns heads of its columns
     * @param groups its rows
     */
    public record Table(String caption, List<Column> columns, List<Group> groups) {}

    /**
     * Rows of a table that stand together.
     *
     * @param head what they have in common; empty where that is nothing
     * @param rows the rows
     */
    public record Group(String head, List<Row> rows) {}

    /**
     * A column.
     *
     * @param head its words
     * @param number whether it holds numbers
     */
    public record Column(String head, boolean number) {}

    /**
     * A row.
     *
     * @param head what it is about
     * @param address of a closer look at it; null for none
     * @param cells its other cells, in the order of the columns
     */
    public record Row(String head, @Nullable String address, List<Cell> cells) {}

    /**
     * A cell.
     *
     * @param head head of its column
     * @param text its words
     * @param number whether it is a number
     * @param under what stands behind it, in smaller type; empty for nothing
     */
    public record Cell(String head, String text, boolean number, String under) {}

    /**
     * A form in which an answer can be taken away.
     *
     * @param words what it is
     * @param address where it stands
     */
    public record Download(String words, String address) {}

    /**
     * A word with its meaning.
     *
     * @param word the word
     * @param means its meaning
     */
    public record Definition(String word, String means) {}
}
