package org.axlecause.statistics;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.axlecause.casefile.StatisticsTerms;

/**
 * What an answer is told apart by, and the words of its groups.
 *
 * @param by what it is told apart by
 * @param regions region of each site
 * @param terms bands and seasons
 */
record Grouping(List<GroupBy> by, Map<String, String> regions, StatisticsTerms terms) {

    private static final int MONTH_LENGTH = 7;
    private static final String NONE = "none";

    Grouping {
        by = List.copyOf(by);
        regions = Map.copyOf(regions);
    }

    List<Dimension> dimensions() {
        return by.stream()
                .map(GroupBy::dimension)
                .flatMap(Stream::ofNullable)
                .distinct()
                .toList();
    }

    boolean isByMonth() {
        return by.stream().anyMatch(GroupBy::isByMonth);
    }

    /** Members of countables that part the causes. */
    List<String> members() {
        return by.stream().map(GroupBy::member).flatMap(Stream::ofNullable).toList();
    }

    /** The group of a count whose members were asked for in this order. */
    List<String> group(CountStore.Count count, List<String> members) {
        return by.stream().map(each -> word(each, count, members)).toList();
    }

    /** A group with the names of what it is told apart by. */
    Map<String, String> named(List<String> group) {
        Map<String, String> named = new LinkedHashMap<>();
        for (int index = 0; index < by.size(); index++) {
            named.put(by.get(index).toString(), group.get(index));
        }
        return named;
    }

    /** Answers in the order of their groups. */
    <T> Comparator<T> byGroup(Function<T, Map<String, String>> group) {
        return (one, other) ->
                order(group.apply(one).values(), group.apply(other).values());
    }

    /** The order in which groups are told: bands from the lowest, seasons as they follow, all else by its word. */
    int order(Collection<String> one, Collection<String> other) {
        Iterator<String> words = other.iterator();
        int index = 0;
        for (String word : one) {
            List<String> known = inOrder(by.get(index));
            String second = words.next();
            int order = known.contains(word) && known.contains(second)
                    ? Integer.compare(known.indexOf(word), known.indexOf(second))
                    : word.compareTo(second);
            if (order != 0) {
                return order;
            }
            index++;
        }
        return 0;
    }

    private List<String> inOrder(GroupBy each) {
        Stream<String> words =
                switch (each) {
                    case AGE_BAND -> terms.ages().stream().map(StatisticsTerms.Band::code);
                    case ODOMETER_BAND -> terms.odometers().stream().map(StatisticsTerms.Band::code);
                    case SEASON -> terms.seasons().stream().map(StatisticsTerms.Season::code);
                    default -> Stream.empty();
                };
        return Stream.concat(words, Stream.of(StatisticsTerms.UNKNOWN)).toList();
    }

    private String word(GroupBy each, CountStore.Count count, List<String> members) {
        if (each.isOfCauses()) {
            String value = count.members().get(members.indexOf(each.member()));
            return value.isEmpty() || value.equals("0") ? NONE : value;
        }
        LocalDate month = count.month();
        if (each.isByMonth() && month != null) {
            return each == GroupBy.MONTH ? month.toString().substring(0, MONTH_LENGTH) : season(month);
        }
        String value = count.group().get(dimensions().indexOf(each.dimension()));
        return each == GroupBy.REGION ? regions.getOrDefault(value, StatisticsTerms.UNKNOWN) : value;
    }

    private String season(LocalDate month) {
        return terms.seasons().stream()
                .filter(season -> season.months().contains(month.getMonth()))
                .findFirst()
                .orElseThrow()
                .code();
    }
}
