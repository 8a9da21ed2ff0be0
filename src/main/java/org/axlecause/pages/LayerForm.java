package org.axlecause.pages;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A layer of a policy as a form.
 *
 * @param name name of the policy
 * @param layer which layer, as its form sends it
 * @param title the layer in words
 * @param layers the layers that may be edited
 * @param tag what tells the draft from its other states; empty where there is none yet
 * @param base the document that the edit began with, as JSON
 * @param head what holds for the whole policy; null on the form of a layer below the chain
 * @param set clauses that this layer sets
 * @param groups clauses that it leaves to the layer above, by what they are about
 * @param wrongRows clauses in which something is wrong
 * @param wrong what keeps the form from being saved
 * @param changes what somebody else has changed since the edit began
 */
public record LayerForm(
        String name,
        String layer,
        String title,
        List<Choice> layers,
        String tag,
        String base,
        @Nullable Head head,
        List<Row> set,
        List<Group> groups,
        List<Row> wrongRows,
        List<String> wrong,
        List<String> changes) {

    /**
     * Something to choose.
     *
     * @param code what is sent
     * @param text its words
     * @param chosen whether it is the present one
     */
    public record Choice(String code, String text, boolean chosen) {

        /** The code as an address takes it. */
        public String inAddress() {
            return URLEncoder.encode(code, StandardCharsets.UTF_8);
        }
    }

    /**
     * What holds for the whole policy.
     *
     * @param means what it is for
     * @param covers the sites, chosen where it judges them alone
     * @param twoPersons whether somebody other than its authors must publish it
     */
    public record Head(String means, List<Choice> covers, boolean twoPersons) {

        /** Names of the sites that it judges alone; none where it judges all. */
        public List<String> chosen() {
            return covers.stream().filter(Choice::chosen).map(Choice::text).toList();
        }
    }

    /**
     * Clauses about one thing.
     *
     * @param title what they are about
     * @param rows the clauses
     */
    public record Group(String title, List<Row> rows) {

        /** Whether something is wrong in one of them. */
        public boolean wrong() {
            return rows.stream().anyMatch(row -> row.wrong() != null);
        }
    }

    /**
     * A clause of the form.
     *
     * @param id its number in the form
     * @param code its code
     * @param key what makes it the same clause in every layer; empty where it is to be added
     * @param means what it means
     * @param source source of the baseline's value; empty where the baseline sets none
     * @param above what holds where it is left alone
     * @param sets what the layer sets; empty where it leaves it alone
     * @param lockedBy layer above that has locked it; null where none has
     * @param unit unit of its value; null where it takes none or any
     * @param fields what it takes
     * @param locked whether it is locked here
     * @param unsaved whether the form says otherwise than the draft
     * @param wrong what is wrong with it; null where nothing is
     */
    public record Row(
            String id,
            String code,
            String key,
            String means,
            String source,
            String above,
            String sets,
            @Nullable String lockedBy,
            @Nullable String unit,
            List<Field> fields,
            boolean locked,
            boolean unsaved,
            boolean another,
            @Nullable String wrong) {

        /** What the form says, in words. */
        public String typed() {
            String said = fields.stream()
                    .map(Field::says)
                    .filter(words -> !words.isEmpty())
                    .collect(Collectors.joining(", "));
            return (said.isEmpty() ? "nothing" : said) + (locked ? ", locked" : "");
        }

        /** What holds until the form is saved. */
        public String holds() {
            return sets.isEmpty() ? above : sets;
        }
    }

    /**
     * A member of a clause.
     *
     * @param name its name in the form
     * @param label its words
     * @param value what it says
     * @param choices what it may say; none where it is typed
     */
    public record Field(String name, String label, String value, List<Choice> choices) {

        /** What it says, in words; empty where it says nothing. */
        public String says() {
            return choices.stream()
                    .filter(Choice::chosen)
                    .map(Choice::text)
                    .findFirst()
                    .orElse(value);
        }
    }
}
