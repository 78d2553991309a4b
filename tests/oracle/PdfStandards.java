import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import org.verapdf.pdfa.validation.profiles.ErrorArgument;
import org.verapdf.pdfa.validation.profiles.ErrorArgumentImpl;
import org.verapdf.pdfa.validation.profiles.Profiles;
import org.verapdf.pdfa.validation.profiles.Rule;
import org.verapdf.pdfa.validation.profiles.ValidationProfile;
import org.verapdf.pdfa.validation.profiles.Variable;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Checks files against PDF/A-3a and PDF/UA-1 with veraPDF's rules and veraPDF's own parser.
 *
 * <pre>java -cp JAR PdfStandards.java 3a|ua1 FILE.pdf...</pre>
 *
 * Exit status: 0 all pass, 1 a file fails, 2 the check itself cannot run.
 */
public class PdfStandards {
    private final PDFAFlavour standard;
    private final ValidationProfile rules;

    PdfStandards(String name) throws Exception {
        standard = PDFAFlavour.fromString(name);
        rules = new RuleBook(name.equals("ua1") ? "PDFUA-1.xml" : "PDFA-3A.xml").profile(standard);
    }

    public static void main(String[] arguments) throws Exception {
        java.util.logging.LogManager.getLogManager().reset();
        VeraGreenfieldFoundryProvider.initialise();
        PdfStandards check = new PdfStandards(arguments[0]);
        boolean allPass = true;
        for (String file : List.of(arguments).subList(1, arguments.length)) {
            try {
                allPass &= check.passes(file);
            } catch (Exception problem) {
                System.out.println("ERROR " + arguments[0] + " " + file + ": " + problem);
                System.exit(2);
            }
        }
        System.exit(allPass ? 0 : 1);
    }

    /** Prints the verdict, and each broken rule once with the first place that breaks it. */
    private boolean passes(String file) throws Exception {
        try (InputStream bytes = new FileInputStream(file);
                PDFAParser parser = Foundries.defaultInstance().createParser(bytes, standard);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(rules, false)) {
            ValidationResult result = validator.validate(parser);
            String verdict = result.isCompliant() ? "PASS" : "FAIL";
            System.out.printf("%s %s %s (%d assertions)%n", verdict, standard.getId(), file, result.getTotalAssertions());
            Set<String> told = new TreeSet<>();
            for (TestAssertion assertion : result.getTestAssertions()) {
                String rule = assertion.getRuleId().getClause() + "-" + assertion.getRuleId().getTestNumber();
                if (assertion.getStatus() == TestAssertion.Status.FAILED && told.add(rule)) {
                    System.out.println("    " + rule + ": " + assertion.getMessage());
                    System.out.println("        " + assertion.getLocation().getContext());
                }
            }
            return result.isCompliant();
        }
    }

    /**
     * The rules of one standard, out of the XML inside the jar. They are read as plain XML,
     * since the jar ships without the classes that veraPDF's own reading of them needs.
     */
    private static final class RuleBook {
        private final Element root;

        RuleBook(String name) throws Exception {
            String path = "/org/verapdf/pdfa/validation/" + name;
            try (InputStream xml = PDFAFlavour.class.getResourceAsStream(path)) {
                if (xml == null) {
                    throw new IOException("no rules at " + path);
                }
                root = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(xml).getDocumentElement();
            }
        }

        ValidationProfile profile(PDFAFlavour standard) {
            Set<Rule> rules = new HashSet<>();
            for (Element rule : below(root, "rule")) {
                rules.add(rule(rule));
            }
            Set<Variable> variables = new HashSet<>();
            for (Element variable : below(root, "variable")) {
                variables.add(Profiles.variableFromValues(
                        variable.getAttribute("name"), variable.getAttribute("object"),
                        text(variable, "defaultValue"), text(variable, "value")));
            }
            if (rules.isEmpty()) {
                throw new IllegalStateException("the jar holds no rules");
            }
            return Profiles.profileFromValues(
                    standard, Profiles.profileDetailsFromValues("", "", "", new Date(0)), "", rules, variables);
        }

        private static Rule rule(Element rule) {
            Element id = below(rule, "id").get(0);
            List<ErrorArgument> arguments = new ArrayList<>();
            for (Element argument : below(rule, "argument")) {
                arguments.add(ErrorArgumentImpl.fromValues(argument.getTextContent(), null, null));
            }
            Boolean deferred = rule.hasAttribute("deferred") ? Boolean.valueOf(rule.getAttribute("deferred")) : null;
            return Profiles.ruleFromValues(
                    Profiles.ruleIdFromValues(
                            PDFAFlavour.Specification.valueOf(id.getAttribute("specification")),
                            id.getAttribute("clause"), Integer.parseInt(id.getAttribute("testNumber"))),
                    rule.getAttribute("object"), deferred, rule.getAttribute("tags"),
                    text(rule, "description"), text(rule, "test"),
                    Profiles.errorFromValues(text(rule, "message"), arguments), new ArrayList<>());
        }

        private static List<Element> below(Element element, String name) {
            NodeList found = element.getElementsByTagName(name);
            List<Element> elements = new ArrayList<>();
            for (int index = 0; index < found.getLength(); index++) {
                elements.add((Element) found.item(index));
            }
            return elements;
        }

        private static String text(Element element, String name) {
            List<Element> found = below(element, name);
            return found.isEmpty() ? "" : found.get(0).getTextContent();
        }
    }
}
