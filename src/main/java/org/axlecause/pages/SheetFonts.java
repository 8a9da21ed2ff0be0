package org.axlecause.pages;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;

/** The type that sheets and charts are set in; it comes with the service, so that they look alike on every machine. */
final class SheetFonts {

    static final String FAMILY = "Liberation Sans";
    static final String REGULAR = "fonts/LiberationSans-Regular.ttf";
    static final String BOLD = "fonts/LiberationSans-Bold.ttf";

    /** Why files: the drawer of charts takes no other form. */
    private static final Map<String, File> FILES = new ConcurrentHashMap<>();

    private SheetFonts() {}

    static Font regular(float size) {
        try {
            return Font.createFont(Font.TRUETYPE_FONT, file(REGULAR)).deriveFont(size);
        } catch (FontFormatException | IOException broken) {
            throw new IllegalStateException("The font " + REGULAR + " can't be read", broken);
        }
    }

    static File file(String name) {
        return FILES.computeIfAbsent(name, SheetFonts::unpacked);
    }

    private static File unpacked(String name) {
        try (InputStream in =
                Objects.requireNonNull(SheetFonts.class.getClassLoader().getResourceAsStream(name), name)) {
            Path file = Files.createTempFile("axlecause-", ".ttf");
            file.toFile().deleteOnExit();
            Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
            return file.toFile();
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "The font " + name + " can't be unpacked to the folder of temporary files", e);
        }
    }
}
