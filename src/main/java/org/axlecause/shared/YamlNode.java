package org.axlecause.shared;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * A value in a YAML file that knows its line. Each reading method throws a {@link YamlException} that names file, line,
 * what is wrong and what to write instead.
 */
public final class YamlNode {

    private static final Pattern DECIMAL = Pattern.compile("-?(0|[1-9][0-9]*)(\\.[0-9]+)?");
    private static final Pattern WHOLE = Pattern.compile("-?(0|[1-9][0-9]{0,8})");

    private final String file;
    private final String name;
    private final int line;
    private final @Nullable String scalar;
    private final boolean quoted;
    private final @Nullable Map<String, YamlNode> members;
    private final @Nullable List<YamlNode> items;

    private YamlNode(
            String file,
            String name,
            Node node,
            @Nullable String scalar,
            boolean quoted,
            @Nullable Map<String, YamlNode> members,
            @Nullable List<YamlNode> items) {
        this.file = file;
        this.name = name;
        this.line = node.getStartMark().getLine() + 1;
        this.scalar = scalar;
        this.quoted = quoted;
        this.members = members;
        this.items = items;
    }

    static YamlNode of(String file, String name, Node node) {
        if (node instanceof MappingNode mapping) {
            Map<String, YamlNode> members = new LinkedHashMap<>();
            for (NodeTuple tuple : mapping.getValue()) {
                int line = tuple.getKeyNode().getStartMark().getLine() + 1;
                if (!(tuple.getKeyNode() instanceof ScalarNode key)
                        || key.getValue().equals("<<")) {
                    throw new YamlException(file, line, "this key is not a plain word", "write a word and a colon");
                }
                if (members.put(key.getValue(), of(file, key.getValue(), tuple.getValueNode())) != null) {
                    throw new YamlException(file, line, "'" + key.getValue() + "' stands twice", "keep one of the two");
                }
            }
            return new YamlNode(file, name, node, null, false, members, null);
        }
        if (node instanceof SequenceNode sequence) {
            List<YamlNode> items = new ArrayList<>();
            for (Node item : sequence.getValue()) {
                items.add(of(file, name, item));
            }
            return new YamlNode(file, name, node, null, false, null, List.copyOf(items));
        }
        ScalarNode plain = (ScalarNode) node;
        boolean quoted = plain.getScalarStyle() != DumperOptions.ScalarStyle.PLAIN;
        return new YamlNode(file, name, node, plain.getValue(), quoted, null, null);
    }

    /** Line of the file, counted from 1. */
    public int line() {
        return line;
    }

    /** Name of the file. */
    public String file() {
        return file;
    }

    /** Name of the member whose value this is. */
    public String name() {
        return name;
    }

    /** Whether it has named members. */
    public boolean isMapping() {
        return members != null;
    }

    /** Whether it is a list. */
    public boolean isList() {
        return items != null;
    }

    /** Whether it is a single written value. */
    public boolean isScalar() {
        return scalar != null;
    }

    /** A fault of this value, to be thrown. */
    public YamlException wrong(String what, String remedy) {
        return new YamlException(file, line, what, remedy);
    }

    /** Names of the members in the order they are written. */
    public Set<String> names() {
        return mapping().keySet();
    }

    /** Whether a member of that name is written. */
    public boolean has(String member) {
        return mapping().containsKey(member);
    }

    /** Refuses members of other names; answers itself. */
    public YamlNode only(String... known) {
        for (Map.Entry<String, YamlNode> entry : mapping().entrySet()) {
            if (!Arrays.asList(known).contains(entry.getKey())) {
                throw entry.getValue()
                        .wrong(
                                "member '" + entry.getKey() + "' of '" + name + "' is not known",
                                "remove it or write one of " + String.join(", ", known));
            }
        }
        return this;
    }

    /** The member of that name, which must be there. */
    public YamlNode member(String member) {
        YamlNode found = optional(member);
        if (found == null) {
            throw wrong("'" + name + "' lacks the member '" + member + "'", "add '" + member + ":' with its value");
        }
        return found;
    }

    /** The member of that name, or null where none is written. */
    public @Nullable YamlNode optional(String member) {
        return mapping().get(member);
    }

    /** The items of this list, in order. */
    public List<YamlNode> items() {
        if (items == null) {
            throw wrong("'" + name + "' is not a list", "write each item on a line of its own behind a dash");
        }
        return items;
    }

    /** The items of the member of that name; none where the member is not written. */
    public List<YamlNode> items(String member) {
        YamlNode found = optional(member);
        return found == null ? List.of() : found.items();
    }

    /** The words of this value. */
    public String text() {
        if (scalar == null) {
            throw wrong("'" + name + "' is not a single value", "write one value behind the colon");
        }
        if (scalar.isBlank()) {
            throw wrong("'" + name + "' is empty", "write its value or remove the line");
        }
        return scalar;
    }

    /** The words of the member of that name. */
    public String text(String member) {
        return member(member).text();
    }

    /** The words of the member of that name, or null where none is written. */
    public @Nullable String optionalText(String member) {
        return read(member, YamlNode::text);
    }

    /** This value as a decimal, with the digits as written. */
    public BigDecimal decimal() {
        String text = text();
        if (!DECIMAL.matcher(text).matches()) {
            throw wrong("value '" + text + "' of '" + name + "' is not a number", "write a decimal such as 0.30");
        }
        return new BigDecimal(text);
    }

    /** The member of that name as a decimal. */
    public BigDecimal decimal(String member) {
        return member(member).decimal();
    }

    /** The member of that name as a decimal, or null where none is written. */
    public @Nullable BigDecimal optionalDecimal(String member) {
        return read(member, YamlNode::decimal);
    }

    /** This value as a whole number. */
    public int whole() {
        String text = text();
        if (!WHOLE.matcher(text).matches()) {
            throw wrong("value '" + text + "' of '" + name + "' is not a whole number", "write digits such as 12");
        }
        return Integer.parseInt(text);
    }

    /** The member of that name as a whole number. */
    public int whole(String member) {
        return member(member).whole();
    }

    /** This value as a day. */
    public LocalDate date() {
        String text = text();
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw wrong("value '" + text + "' of '" + name + "' is not a day", "write a date such as 2012-01-01");
        }
    }

    /** The member of that name as a day. */
    public LocalDate date(String member) {
        return member(member).date();
    }

    /** The member of that name as a day, or null where none is written. */
    public @Nullable LocalDate optionalDate(String member) {
        return read(member, YamlNode::date);
    }

    /** This value as yes or no. */
    public boolean flag() {
        return switch (text()) {
            case "true" -> true;
            case "false" -> false;
            default ->
                throw wrong(
                        "value '" + text() + "' of '" + name + "' is neither true nor false", "write true or false");
        };
    }

    /** The member of that name as yes or no; null where none is written. */
    public @Nullable Boolean optionalFlag(String member) {
        return read(member, YamlNode::flag);
    }

    /** This value as a code of the list, by the constant's {@code toString}. */
    public <E extends Enum<E>> E code(Class<E> codes) {
        String text = text();
        for (E constant : codes.getEnumConstants()) {
            if (constant.toString().equals(text)) {
                return constant;
            }
        }
        String known = String.join(
                ", ",
                Arrays.stream(codes.getEnumConstants()).map(Enum::toString).toList());
        throw wrong("value '" + text + "' of '" + name + "' is not a known code", "write one of " + known);
    }

    /** The member of that name as a code of the list. */
    public <E extends Enum<E>> E code(String member, Class<E> codes) {
        return member(member).code(codes);
    }

    /** The member of that name as a code of the list, or null where none is written. */
    public <E extends Enum<E>> @Nullable E optionalCode(String member, Class<E> codes) {
        YamlNode found = optional(member);
        return found == null ? null : found.code(codes);
    }

    /** The member of that name as codes: one code or a list of them; none where the member is not written. */
    public <E extends Enum<E>> List<E> codes(String member, Class<E> codes) {
        YamlNode found = optional(member);
        if (found == null) {
            return List.of();
        }
        return found.isList()
                ? found.items().stream().map(item -> item.code(codes)).toList()
                : List.of(found.code(codes));
    }

    /** The member of that name as words: one or a list of them; none where the member is not written. */
    public List<String> texts(String member) {
        YamlNode found = optional(member);
        if (found == null) {
            return List.of();
        }
        return found.isList() ? found.items().stream().map(YamlNode::text).toList() : List.of(found.text());
    }

    /** The same value as JSON: plain numbers become decimals, {@code true}, {@code false} and {@code null} themselves. */
    public JsonNode toJson() {
        JsonNodeFactory json = JsonNodeFactory.instance;
        if (members != null) {
            ObjectNode object = json.objectNode();
            members.forEach((key, value) -> object.set(key, value.toJson()));
            return object;
        }
        if (items != null) {
            ArrayNode array = json.arrayNode();
            items.forEach(item -> array.add(item.toJson()));
            return array;
        }
        String text = scalar == null ? "" : scalar;
        if (quoted) {
            return json.textNode(text);
        }
        return switch (text) {
            case "", "null", "~" -> json.nullNode();
            case "true" -> json.booleanNode(true);
            case "false" -> json.booleanNode(false);
            default -> DECIMAL.matcher(text).matches() ? json.numberNode(new BigDecimal(text)) : json.textNode(text);
        };
    }

    private Map<String, YamlNode> mapping() {
        if (members == null) {
            throw wrong("'" + name + "' has no members", "write its members below it, indented, as name: value");
        }
        return members;
    }

    private <T> @Nullable T read(String member, Function<YamlNode, T> reader) {
        YamlNode found = optional(member);
        return found == null ? null : reader.apply(found);
    }
}
